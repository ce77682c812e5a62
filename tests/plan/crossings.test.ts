import { describe, expect, it } from 'vitest';
import { crossingsOf, type NightPassages, stretchesOf, timeOfShare } from '@/lib/plan/crossings';

/** Cases drawn as rows of numbers, counted; the mean is told apart. Instants are 0, 100, 200 ... */
function night(cases: readonly (readonly number[])[], mean: readonly number[] = cases[0]!): NightPassages {
  return {
    at: Float64Array.from(mean, (_, j) => 100 * j),
    mean: Float64Array.from(mean),
    passed: ({ from, to, rising }, threshold) =>
      Float64Array.from({ length: to - from + 1 }, (_, k) => {
        const [first, last] = rising ? [from, from + k] : [to - k, to];
        return (
          cases.filter((row) => row.slice(first, last + 1).some((ideal) => ideal > threshold)).length /
          cases.length
        );
      }),
  };
}

const LANE = { lean: 1, rich: -1 };

describe('The stretches of a night', () => {
  it('turn where the mean turns, and not at a wiggle', () => {
    expect(stretchesOf(Float64Array.of(0, 1, 2, 1.999, 3, 2, 1, 0))).toEqual([
      { from: 0, to: 4, rising: true },
      { from: 4, to: 7, rising: false },
    ]);
    expect(stretchesOf(Float64Array.of(2, 1, 0, 1, 2))).toEqual([
      { from: 0, to: 2, rising: false },
      { from: 2, to: 4, rising: true },
    ]);
    expect(stretchesOf(Float64Array.of(0, 0, 0))).toEqual([{ from: 0, to: 2, rising: true }]);
    expect(stretchesOf(Float64Array.of(5))).toEqual([{ from: 0, to: 0, rising: true }]);
  });
});

describe('Crossings', () => {
  it('of a night that cools and warms again are rich, right, lean, right, rich', () => {
    const one = [-3, -2, 0, 2, 3, 2, 0, -2];
    const found = crossingsOf(night([one]), LANE);
    expect(found.map(({ at, to }) => [at, to])).toEqual([
      [150, 'right'],
      [250, 'lean'],
      [550, 'right'],
      [650, 'rich'],
    ]);
  });

  it('count a jet as lean from the first moment to the last, wobbles included', () => {
    const mean = [0, 0.5, 2, 3, 4, 3, 2, 0.5, 0];
    const wobbly = [0, 1.5, 0.5, 3, 4, 3, 0.5, 1.5, 0];
    const found = crossingsOf(night([wobbly], mean), LANE);
    expect(found.map(({ at, to }) => [Math.round(at), to])).toEqual([
      [50, 'lean'],
      [750, 'right'],
    ]);
  });

  it('are stated where over half of the draws have them, with the middle and an 80 % range', () => {
    const ramps = Array.from({ length: 10 }, (_, s) => [
      0,
      ...Array.from({ length: 10 }, (__, j) => (j >= s ? 2 : 0)),
    ]);
    const mean = Array.from({ length: 11 }, (_, j) => j);
    const [lean] = crossingsOf(night(ramps, mean), LANE);
    // Draw s passes half way from 100 s to 100 (s + 1): 50, 150 ... 950.
    expect(lean).toEqual({ at: 500, earliest: 100, latest: 900, to: 'lean' });
    const never = [...ramps.slice(0, 4), ...Array.from({ length: 6 }, () => new Array<number>(11).fill(0))];
    expect(crossingsOf(night(never, mean), LANE)).toEqual([]);
  });

  it('have no latest where one draw in ten does not cross, and start with the night where one in ten had crossed', () => {
    const mean = [0, 1, 2, 3];
    const rows = [
      ...Array.from({ length: 3 }, () => [2, 2, 2, 2]),
      ...Array.from({ length: 5 }, () => [0, 0, 2, 2]),
      ...Array.from({ length: 2 }, () => [0, 0, 0, 0]),
    ];
    expect(crossingsOf(night(rows, mean), LANE)).toEqual([
      // 3 in 10 have passed by 100, 8 in 10 by 200.
      { at: 140, earliest: 0, latest: null, to: 'lean' },
    ]);
  });
});

describe('The time by which a share has passed', () => {
  const at = Float64Array.of(0, 100, 200, 300);
  const rising = { from: 0, to: 3, rising: true };

  it('lies straight between instants, and beyond the stretch is infinite', () => {
    const passed = Float64Array.of(0.2, 0.4, 0.8, 0.8);
    expect(timeOfShare(at, rising, { passed, share: 0.5 })).toBeCloseTo(125, 9);
    expect(timeOfShare(at, rising, { passed, share: 0.1 })).toBe(Number.NEGATIVE_INFINITY);
    expect(timeOfShare(at, rising, { passed, share: 0.9 })).toBe(Number.POSITIVE_INFINITY);
  });

  it('counts backwards where the ideal falls: half are last above before it', () => {
    const passed = Float64Array.of(0, 0.4, 0.6, 1);
    expect(timeOfShare(at, { ...rising, rising: false }, { passed, share: 0.5 })).toBeCloseTo(150, 9);
    // One in ten is last above in the first step: nine in ten from t = 100 (0.6) back to 0 (1).
    expect(timeOfShare(at, { ...rising, rising: false }, { passed, share: 0.1 })).toBeCloseTo(25, 9);
  });
});
