import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jetArea, markingProblem, sizeOfArea } from '@/lib/carb/jets';
import type { JetMarking } from '@/lib/carb/machine';

const FLOW: JetMarking = { kind: 'flow' };
const BORE: JetMarking = { kind: 'bore' };
const LIST: JetMarking = {
  kind: 'list',
  jets: [
    { size: 50, area: 3.4 },
    { size: 40, area: 2 },
    { size: 45, area: 2.5 },
  ],
};

describe('what the number on a jet means', () => {
  it('flow-marked jets pass fuel in proportion to their number', () => {
    expect(jetArea(FLOW, 420) / jetArea(FLOW, 400)).toBeCloseTo(1.05, 12);
  });

  it('bore-marked jets pass fuel with the square of their number', () => {
    expect(jetArea(BORE, 168) / jetArea(BORE, 160)).toBeCloseTo(1.05 ** 2, 12);
  });

  it('a listed jet has the area its owner wrote beside it, in whatever order the list stands', () => {
    expect(jetArea(LIST, 40)).toBeCloseTo(2, 12);
    expect(jetArea(LIST, 45)).toBeCloseTo(2.5, 12);
    expect(jetArea(LIST, 50)).toBeCloseTo(3.4, 12);
  });

  it('between two listed jets the area follows a power of the number', () => {
    // Half way in ln number between 40 and 45 is half way in ln area: √(2 · 2.5).
    expect(jetArea(LIST, Math.sqrt(40 * 45))).toBeCloseTo(Math.sqrt(5), 12);
  });

  it('outside the list the last slope carries on', () => {
    const slope = Math.log(3.4 / 2.5) / Math.log(50 / 45);
    expect(jetArea(LIST, 55)).toBeCloseTo(3.4 * (55 / 50) ** slope, 12);
    const firstSlope = Math.log(2.5 / 2) / Math.log(45 / 40);
    expect(jetArea(LIST, 35)).toBeCloseTo(2 * (35 / 40) ** firstSlope, 12);
  });

  it('a list of squares reads like bore marks between its jets', () => {
    const squares: JetMarking = {
      kind: 'list',
      jets: [150, 160, 170].map((size) => ({ size, area: size * size })),
    };
    expect(jetArea(squares, 163.7) / jetArea(squares, 150)).toBeCloseTo((163.7 / 150) ** 2, 10);
  });

  it('does not change the list it is given', () => {
    jetArea(LIST, 44);
    expect(LIST.kind === 'list' && LIST.jets.map((jet) => jet.size)).toEqual([50, 40, 45]);
  });

  it.each([FLOW, BORE, LIST])('size and area turn into each other for $kind', (marking) => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1000, noNaN: true }), (size) => {
        expect(sizeOfArea(marking, jetArea(marking, size)) / size).toBeCloseTo(1, 10);
      }),
    );
  });

  it('a larger number never passes less, on any rising list', () => {
    const gaps = fc.array(
      fc.tuple(fc.double({ min: 0.1, max: 30, noNaN: true }), fc.double({ min: 0.01, max: 9, noNaN: true })),
      {
        minLength: 2,
        maxLength: 20,
      },
    );
    const size = fc.double({ min: 0.5, max: 800, noNaN: true });
    fc.assert(
      fc.property(gaps, size, size, (steps, a, b) => {
        let last = { size: 5, area: 1 };
        const jets = steps.map(([ds, da]) => {
          last = { size: last.size + ds, area: last.area + da };
          return last;
        });
        const marking: JetMarking = { kind: 'list', jets };
        expect(jetArea(marking, Math.max(a, b))).toBeGreaterThanOrEqual(jetArea(marking, Math.min(a, b)));
        expect(jetArea(marking, a + 1)).toBeGreaterThan(jetArea(marking, a));
      }),
    );
  });
});

describe('a list with a slip of the finger in it', () => {
  it('stays finite however far outside it is read', () => {
    const slip: JetMarking = {
      kind: 'list',
      jets: [
        { size: 410, area: 100 },
        { size: 410.1, area: 200 },
      ],
    };
    for (const size of [0.001, 10_000]) {
      const area = jetArea(slip, size);
      expect(Number.isFinite(area) && area > 0).toBe(true);
      expect(sizeOfArea(slip, area) / size).toBeCloseTo(1, 9);
    }
    expect(sizeOfArea(slip, 1e-9)).toBeGreaterThan(0);
    expect(sizeOfArea(slip, 1e9)).toBeLessThan(1e6);
  });
});

describe('a list that is no scale', () => {
  it.each([
    [[{ size: 40, area: 2 }], { code: 'too-few-jets-listed', listed: 1 }],
    [
      [
        { size: 40, area: 2 },
        { size: 45, area: 0 },
      ],
      { code: 'jet-not-positive', size: 45, area: 0 },
    ],
    [
      [
        { size: 40, area: 2 },
        { size: Number.NaN, area: 3 },
      ],
      { code: 'jet-not-positive', size: Number.NaN, area: 3 },
    ],
    [
      [
        { size: 40, area: 2 },
        { size: 40, area: 2.1 },
      ],
      { code: 'size-listed-twice', size: 40 },
    ],
    [
      [
        { size: 45, area: 2 },
        { size: 40, area: 2.1 },
      ],
      { code: 'area-not-rising', size: 40, next: 45 },
    ],
  ])('is refused with the jet that breaks it: %j', (jets, problem) => {
    expect(markingProblem({ kind: 'list', jets })).toEqual(problem);
  });

  it('a good list and the two known marks have no problem', () => {
    expect([LIST, FLOW, BORE].map(markingProblem)).toEqual([null, null, null]);
  });

  it.each([0, -410, Number.NaN, Number.POSITIVE_INFINITY])(
    'a jet of size %s is a programming error',
    (size) => {
      expect(() => jetArea(FLOW, size)).toThrow(RangeError);
      expect(() => sizeOfArea(FLOW, size)).toThrow(RangeError);
    },
  );
});
