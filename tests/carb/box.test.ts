import { describe, expect, it } from 'vitest';
import { boxFromRange, normaliseBox, pieces } from '@/lib/carb/box';
import { logSizeStep, USUAL_LOG_STEP } from '@/lib/carb/size-step';

const MESSY = [
  { size: 420, count: 1 },
  { size: 400, count: 2 },
  { size: 410, count: 0 },
  { size: 420, count: 2 },
];

describe('the box', () => {
  it('is sorted, equal sizes are added up and empty ones dropped', () => {
    expect(normaliseBox(MESSY)).toEqual([
      { size: 400, count: 2 },
      { size: 420, count: 3 },
    ]);
  });

  it('leaves what it was given alone', () => {
    const before = structuredClone(MESSY);
    normaliseBox(MESSY);
    expect(MESSY).toEqual(before);
  });

  it('counts pieces', () => {
    expect(pieces(MESSY)).toBe(5);
    expect(pieces([])).toBe(0);
  });

  it('"from 380 to 460 by 10" is nine sizes', () => {
    const box = boxFromRange({ lowest: 380, highest: 460, step: 10, count: 2 });
    expect(box).toHaveLength(9);
    expect(box[0]).toEqual({ size: 380, count: 2 });
    expect(box[8]).toEqual({ size: 460, count: 2 });
  });

  it('steps of 2.5 stay exact, and a range that ends between two sizes stops before its end', () => {
    const box = boxFromRange({ lowest: 155, highest: 164, step: 2.5, count: 1 });
    expect(box.map((entry) => entry.size)).toEqual([155, 157.5, 160, 162.5]);
  });

  it('a range with no step, or upside down, is an empty box', () => {
    expect(boxFromRange({ lowest: 380, highest: 460, step: 0, count: 2 })).toEqual([]);
    expect(boxFromRange({ lowest: 460, highest: 380, step: 10, count: 2 })).toEqual([]);
  });
});

describe('what one size means', () => {
  const box = boxFromRange({ lowest: 380, highest: 460, step: 10, count: 2 });

  it('is the narrower gap to a neighbour in the box', () => {
    expect(logSizeStep({ marking: { kind: 'flow' }, box }, 410)).toBeCloseTo(Math.log(420 / 410), 12);
  });

  it('counts area, so bore marks step twice as far', () => {
    const bores = boxFromRange({ lowest: 160, highest: 170, step: 2, count: 2 });
    expect(logSizeStep({ marking: { kind: 'bore' }, box: bores }, 164)).toBeCloseTo(
      2 * Math.log(166 / 164),
      12,
    );
  });

  it("a person's own list tells it even where the box is thin", () => {
    const marking = {
      kind: 'list',
      jets: [
        { size: 1, area: 100 },
        { size: 2, area: 103 },
        { size: 3, area: 105 },
      ],
    } as const;
    expect(logSizeStep({ marking, box: [{ size: 1, count: 1 }] }, 2)).toBeCloseTo(Math.log(105 / 103), 12);
  });

  it('a lone jet, an empty box, a gap with jets missing and a slip of the finger fall back on 2.5 %', () => {
    const gapped = [
      { size: 380, count: 1 },
      { size: 420, count: 1 },
    ];
    const slip = [{ size: 421, count: 1 }];
    for (const jets of [[], slip, [{ size: 420, count: 4 }], gapped])
      expect(logSizeStep({ marking: { kind: 'flow' }, box: jets }, 420)).toBe(USUAL_LOG_STEP);
  });
});
