import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hoursNamed, sizesNamed } from '@/lib/night/axis-names';
import {
  type Behind,
  boxOfWords,
  freePlaces,
  isCrossed,
  type Patch,
  type PlacedWords,
  type Polyline,
} from '@/lib/night/free-place';
import { hasLane, type PlanStep, placesOfName, placesOfSide } from '@/lib/night/step-places';

const SIZE = 18;
/** A condensed face, nearly. */
const widthOf = (words: string, size: number): number => words.length * size * 0.47;
const boxOf = ({ x, y, words }: PlacedWords): Patch => boxOfWords({ x, y }, widthOf(words, SIZE), SIZE);
const isOver = (a: Patch, b: Patch): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** A night of up to seven swaps in a chart of any width, and a curve through it that rises as it likes. */
const nights = fc
  .record({
    width: fc.integer({ min: 220, max: 1400 }),
    lengths: fc.array(fc.integer({ min: 1, max: 10 }), { minLength: 1, maxLength: 8 }),
    rises: fc.array(fc.integer({ min: -30, max: 60 }), { minLength: 8, maxLength: 8 }),
    lane: fc.integer({ min: 12, max: 90 }),
    curve: fc.array(fc.integer({ min: 0, max: 300 }), { minLength: 3, maxLength: 12 }),
  })
  .map(({ width, lengths, rises, lane, curve }) => {
    const plot: Patch = { left: 44, right: 44 + width, top: 6, bottom: 306 };
    const all = lengths.reduce((sum, length) => sum + length, 0);
    let [left, y] = [plot.left, 260];
    const steps = lengths.map((length, i): PlanStep => {
      y = Math.min(290, Math.max(30, y - (i === 0 ? 0 : (rises[i] ?? 0))));
      const right = left + (length / all) * width;
      const step = {
        left,
        right,
        y,
        leanEdge: y - lane * 0.4,
        richEdge: Math.min(306, y + lane * 0.6),
        bounds: null,
      };
      left = right;
      return step;
    });
    const points = curve.map((up, i) => ({
      x: plot.left + (i / (curve.length - 1)) * width,
      y: plot.bottom - up,
    }));
    return { plot, steps, curve: points };
  });

const lineOf = (steps: readonly PlanStep[]): Polyline =>
  steps.flatMap(({ left, right, y }) => [
    { x: left, y },
    { x: right, y },
  ]);
const NAMES = ['Put in 420, 20:00', '420'];

function named(plot: Patch, steps: readonly PlanStep[], drawn: Behind, light: readonly Polyline[] = []) {
  return freePlaces(
    steps.map((step) => ({
      words: NAMES,
      size: SIZE,
      places: placesOfName(steps, step, { size: SIZE, plot }),
      drawn,
      light,
    })),
    plot,
    widthOf,
  );
}

describe('the names of the steps of a night', () => {
  it('lie on no line, on no other name and within the plot, whatever the night', () => {
    fc.assert(
      fc.property(nights, ({ plot, steps, curve }) => {
        const drawn = { lines: [curve, lineOf(steps)], boxes: [] };
        const boxes = named(plot, steps, drawn).flatMap((place) => (place === null ? [] : [boxOf(place)]));
        for (const [i, box] of boxes.entries()) {
          expect(drawn.lines.filter((line) => isCrossed(box, line))).toEqual([]);
          expect(boxes.slice(i + 1).filter((other) => isOver(box, other))).toEqual([]);
          expect([box.left >= plot.left, box.right <= plot.right, box.top >= plot.top]).not.toContain(false);
        }
      }),
    );
  });

  it('stand nearest to their own step', () => {
    fc.assert(
      fc.property(nights, ({ plot, steps, curve }) => {
        const places = named(plot, steps, { lines: [curve], boxes: [] });
        for (const [i, place] of places.entries()) {
          if (place === null) continue;
          const box = boxOf(place);
          const away = (y: number) => Math.abs(y - (box.top + box.bottom) / 2);
          const over = steps.filter(({ left, right }) => left < box.right && right > box.left);
          for (const { y } of over) expect(away(y)).toBeGreaterThanOrEqual(away(steps[i]!.y));
        }
      }),
    );
  });

  it('are whole over the beginning of a step that has room, shorter where only that fits, and none where nothing does', () => {
    const plot = { left: 0, right: 600, top: 0, bottom: 300 };
    const step = (left: number, right: number, y: number): PlanStep => ({
      left,
      right,
      y,
      leanEdge: y - 60,
      richEdge: y + 60,
      bounds: null,
    });
    const wide = [step(0, 300, 200), step(300, 600, 150)];
    expect(named(plot, wide, { lines: [lineOf(wide)], boxes: [] })[1]).toEqual({
      words: NAMES[0],
      x: 308,
      y: 140,
    });
    const fence = (x: number): Polyline => [
      { x, y: 0 },
      { x, y: 300 },
    ];
    const lines = [lineOf(wide), ...Array.from({ length: 12 }, (_, i) => fence(50 * i))];
    const short = named(plot, wide, { lines, boxes: [] })[1];
    expect(short?.words).toBe('420');
    const nowhere = Array.from({ length: 60 }, (_, i) => fence(10 * i));
    expect(named(plot, wide, { lines: nowhere, boxes: [] })).toEqual([null, null]);
    // A light line is kept clear of where that takes little, and lain on where nothing else is near.
    const drawn = { lines: [lineOf(wide)], boxes: [] };
    const beside = named(plot, wide, drawn, [fence(310)])[1];
    expect(beside).toMatchObject({ words: NAMES[0], y: 140 });
    expect(beside!.x).toBeGreaterThan(310);
    expect(named(plot, wide, drawn, nowhere)[1]).toEqual({ words: NAMES[0], x: 308, y: 140 });
  });
});

it('a step too short for a name over it has it beside it, and that of a swap stands at its bounds where that has no room', () => {
  const plot = { left: 0, right: 600, top: 0, bottom: 300 };
  const step = (left: number, right: number, y: number, bounds: PlanStep['bounds'] = null): PlanStep => ({
    left,
    right,
    y,
    leanEdge: y - 40,
    richEdge: y + 40,
    bounds,
  });
  const steps = [step(0, 400, 100), step(400, 408, 250), step(408, 440, 100, { left: 400, right: 416 })];
  const [, short] = named(plot, steps, { lines: [lineOf(steps)], boxes: [] });
  expect(short).toMatchObject({ words: NAMES[0], x: 418 });
  expect(boxOf(short!).top).toBeLessThan(250);
  expect(boxOf(short!).bottom).toBeGreaterThan(250);
  const filled = { left: 0, right: 600, top: 20, bottom: 230 };
  const [, , swap] = named(plot, steps, { lines: [], boxes: [filled] });
  expect(swap).toMatchObject({ words: NAMES[0], x: 426, y: 290 });
  expect(hasLane(steps[1]!)).toBe(false);
  expect(hasLane(steps[2]!)).toBe(true);
});

it('LEAN and RICH stand outside of the edges of the last step that has room for them', () => {
  const plot = { left: 0, right: 400, top: 0, bottom: 300 };
  const steps: readonly PlanStep[] = [
    { left: 0, right: 380, y: 200, leanEdge: 160, richEdge: 240, bounds: null },
    { left: 380, right: 400, y: 150, leanEdge: 110, richEdge: 190, bounds: null },
  ];
  const [lean, rich] = freePlaces(
    (['lean', 'rich'] as const).map((side) => ({
      words: [side.toUpperCase()],
      size: 15,
      places: placesOfSide(steps, side, { size: 15, plot }),
      drawn: { lines: [lineOf(steps)], boxes: [] },
      light: [],
    })),
    plot,
    widthOf,
  );
  for (const place of [lean, rich]) expect(place!.x + widthOf('LEAN', 15)).toBeLessThanOrEqual(380);
  expect(lean!.y).toBeLessThan(160);
  expect(rich!.y - 15).toBeGreaterThan(240);
});

describe('the hours named under the chart', () => {
  const hours = (perHour: number, widthOfHour: (hour: number) => number) =>
    Array.from({ length: 20 }, (_, i) => ({
      hour: (i + 15) % 24,
      x: 44 + i * perHour,
      width: widthOfHour((i + 15) % 24),
    }));
  /** "9:00 pm" and "10:00 pm". */
  const twelve = (hour: number): number => (hour % 12 >= 10 || hour % 12 === 0 ? 60 : 52);

  it('keep clear of each other and of the edges at any width, and are as many as can', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 200 }),
        fc.integer({ min: 30, max: 90 }),
        (perHour, nameWidth) => {
          const all = hours(perHour, () => nameWidth);
          const width = 44 + 19 * perHour + 22;
          const shown = hoursNamed(all, width);
          for (const [i, { x, width: name }] of shown.entries()) {
            const next = shown[i + 1];
            if (next !== undefined) expect(next.x - x - name).toBeGreaterThanOrEqual(12);
            expect(x + name / 2).toBeLessThanOrEqual(width);
          }
          // One wide as the widest beside each would not have fitted.
          if (perHour >= nameWidth + 12) expect(shown.length).toBeGreaterThanOrEqual(all.length - 2);
        },
      ),
    );
  });

  it('thin out by the widest of them, not by a count', () => {
    expect(
      hoursNamed(
        hours(68, () => 40),
        2000,
      ),
    ).toHaveLength(20);
    // From 10 pm on no name would be clear of the next.
    expect(hoursNamed(hours(68, twelve), 2000).map(({ hour }) => hour % 2)).not.toContain(1);
    expect(hoursNamed(hours(73, twelve), 2000)).toHaveLength(20);
  });
});

it('jets named on the axis stand clear of each other, and all where there is room', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 60, max: 400 }),
      fc.constantFrom(2.5, 5, 10),
      fc.integer({ min: 2, max: 14 }),
      fc.integer({ min: 15, max: 36 }),
      (height, step, count, line) => {
        const sizes = Array.from({ length: count }, (_, i) => 160 + i * step);
        const range = { least: 160 - step / 2, most: 160 + (count - 0.5) * step };
        const shown = sizesNamed(sizes, range, { height, line });
        const perSize = height / (range.most - range.least);
        shown.slice(1).forEach((size, i) => {
          expect((size - shown[i]!) * perSize).toBeGreaterThanOrEqual(line);
        });
        if (step * perSize >= line) expect(shown).toEqual(sizes);
      },
    ),
  );
});
