import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxFromRange } from '@/lib/carb/box';
import { jetArea } from '@/lib/carb/jets';
import { LIMIT_CHOICES } from '@/lib/carb/limits';
import type { Machine } from '@/lib/carb/machine';
import { logIdealArea, logIdealSd } from '@/lib/carb/response';
import { typedSeriesFromJson } from '@/lib/contract/typed-hours-from-json';
import { makePlan } from '@/lib/plan/make-plan';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import { expectOk } from '@/lib/result/result';
import { instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { type CardAxes, type CardCell, cardAir } from '@/lib/trail/card';
import { madeBox } from '@/lib/trail/made-box';
import { celsiusToKelvin, kelvinToCelsius } from '@/lib/units/convert';
import { metre, ratio } from '@/lib/units/quantity';
import { jetCard } from '@/tests/support/jet-card';
import { airOf } from '../support/race-machine';
import { trailMachine } from '../support/trail-machine';

const NOON = instant(Date.UTC(2027, 0, 16, 12));
const HUMIDITY = 0.8;
const axesOf = (celsius: readonly number[], heights: readonly number[]): CardAxes => ({
  temperatures: celsius.map(celsiusToKelvin),
  elevations: heights.map(metre),
  relativeHumidity: ratio(HUMIDITY),
});
const AXES = axesOf([10, 0, -10, -20, -30, -40], [-400, 0, 900, 1800, 3200]);
const BOX = boxFromRange({ lowest: 280, highest: 520, step: 10, count: 3 });
const machine = trailMachine({ baselineAir: airOf(-10, 905, 0.8), box: BOX });
const staggered = trailMachine({
  baselineAir: airOf(-10, 905, 0.8),
  box: BOX,
  carburettors: [{ main: 410 }, { main: 390 }, { main: 410 }],
});
const bore = trailMachine({
  baselineAir: airOf(-2, 1000, 0.8),
  marking: { kind: 'bore' },
  carburettors: [{ main: 135 }],
  box: boxFromRange({ lowest: 100, highest: 170, step: 2.5, count: 1 }),
  limits: LIMIT_CHOICES.trail,
});

/** The planner asked in the ordinary way: hours typed for the place, one read from the thermometer, one run. */
function planned(of: Machine, cell: CardCell, change: { fitted: number[] | null; worthIt: number | null }) {
  const typed = {
    hours: [0, 1, 2].map((i) => ({
      time: isoUtc(instant(NOON + i * 3_600_000)),
      temperatureC: kelvinToCelsius(cell.temperature),
    })),
    pressure: { kind: 'standard' } as const,
    relativeHumidity: HUMIDITY,
  };
  const at = instant(NOON + 3_600_000);
  return expectOk(
    makePlan({
      machine: { ...of, trim: null },
      runs: [{ name: 'Ride', start: at, end: at, weight: 1, typicalSeconds: null }],
      series: expectOk(typedSeriesFromJson(typed, cell.elevation)).series,
      readings: [
        { id: 'r', at, temperature: cell.temperature, stationPressure: null, relativeHumidity: null },
      ],
      now: NOON,
      fitted: change.fitted === null ? null : { mains: change.fitted, trim: null },
      made: [],
      accepted: null,
      options: { ...DEFAULT_OPTIONS, worthIt: change.worthIt === null ? null : ratio(change.worthIt) },
    }),
  );
}

describe.each([
  ['two flow-marked mains', machine],
  ['three staggered mains', staggered],
  ['one bore-marked main with trail limits', bore],
])('the card of %s', (_, of) => {
  const cells = expectOk(jetCard(of, AXES)).rows.flat();

  it('says in every cell what the planner says when it is asked at that air', () => {
    for (const cell of cells)
      expect(cell.mains).toEqual(planned(of, cell, { fitted: null, worthIt: 0 }).runs[0]!.setting.mains);
  });

  it('is left alone by the planner as it comes, with the card’s jets fitted', () => {
    for (const cell of cells.filter(({ mark }) => mark !== 'borrow'))
      expect(planned(of, cell, { fitted: [...cell.mains], worthIt: null }).swaps).toEqual([]);
  });

  it('keeps the lean limit in every cell that needs nothing borrowed', () => {
    for (const { chanceOfLean, mark } of cells)
      if (mark !== 'borrow') expect(chanceOfLean).toBeLessThanOrEqual(of.limits.risk);
  });
});

describe('rounding to the safe side', () => {
  it('gives the smallest jet that a normal curve worked by hand finds safe', () => {
    // Closed form: P(lean) = Φ((ideal + ln(1 − lean) − delivered)/sd), risk 5 % is 1.644854 sd. The sds are those the
    // planner names as judgement: 10 hPa of weather on the standard pressure; a thermometer of 0.5 K against 2 K.
    const { rows } = expectOk(jetCard(machine, AXES));
    for (const cell of rows.flat()) {
      const air = cardAir({
        temperature: cell.temperature,
        elevation: cell.elevation,
        relativeHumidity: ratio(HUMIDITY),
      });
      const ideal = logIdealArea(machine, air);
      const perPascal = 0.65 / air.pressure;
      const perKelvin = 0.65 / air.temperature;
      const thermometer = Math.sqrt(1 / (1 / 0.5 ** 2 + 1 / 2 ** 2));
      const sd = Math.hypot(logIdealSd(machine, air), perPascal * 1000, perKelvin * thermometer);
      const least = ideal + Math.log(1 - 0.02) + 1.644854 * sd;
      const areaOf = (size: number) =>
        Math.log(jetArea(machine.marking, size) / jetArea(machine.marking, 410));
      const right = BOX.find(({ size }) => areaOf(size) >= least)!.size;
      // Where the curve passes within a ten-thousandth of a jet's own area the two may differ by that jet.
      const close = BOX.some(({ size }) => Math.abs(areaOf(size) - least) < 3e-4);
      if (!close) expect(cell.mains).toEqual([right, right]);
    }
  });

  it('never goes below the ideal by more than the lean limit', () => {
    for (const cell of expectOk(jetCard(machine, AXES)).rows.flat()) {
      const air = cardAir({
        temperature: cell.temperature,
        elevation: cell.elevation,
        relativeHumidity: ratio(HUMIDITY),
      });
      expect(cell.mains[0]! / 410).toBeGreaterThan(Math.exp(logIdealArea(machine, air)) * 0.98);
    }
  });
});

describe('colder or lower', () => {
  it('never gives a smaller jet', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -50, max: 30 }),
        fc.integer({ min: 1, max: 25 }),
        fc.integer({ min: -400, max: 3600 }),
        fc.integer({ min: 20, max: 1500 }),
        fc.constantFrom(machine, staggered, bore),
        (warm, colder, low, rise, of) => {
          const [top, bottom] = expectOk(jetCard(of, axesOf([warm, warm - colder], [low, low + rise]))).rows;
          const [warmLow, warmHigh] = top!;
          const [coldLow, coldHigh] = bottom!;
          for (const [richer, leaner] of [
            [coldLow, warmLow],
            [coldHigh, warmHigh],
            [warmLow, warmHigh],
            [coldLow, coldHigh],
          ] as const)
            for (const [i, main] of richer!.mains.entries())
              expect(main).toBeGreaterThanOrEqual(leaner!.mains[i]!);
        },
      ),
      { numRuns: 60, seed: 5 },
    );
  });
});

describe('what the box lacks', () => {
  const cold = axesOf([-20], [600]);
  const cellOf = (of: Machine, axes = cold) => expectOk(jetCard(of, axes)).rows[0]![0]!;
  const whole = cellOf(machine);

  it('is a size between: marked, and the size that is made is named', () => {
    const gap = { ...machine, box: BOX.filter(({ size }) => size !== whole.mains[0]) };
    const cell = cellOf(gap);
    expect(cell).toMatchObject({ mark: 'missing-size', wanted: whole.mains });
    expect(cell.mains[0]).toBe(whole.mains[0]! + 10);
  });

  it('is a larger size: the richest is fitted, marked, and the one to borrow is named', () => {
    const short = { ...machine, box: BOX.filter(({ size }) => size <= 410) };
    const cell = cellOf(short);
    expect(cell).toMatchObject({ mark: 'borrow', mains: [410, 410], wanted: whole.mains });
    expect(cell.needed![0]).toBeGreaterThan(410);
    expect(cell.needed![0]).toBeLessThanOrEqual(whole.mains[0]!);
  });

  it('is a smaller size on a warm mountain', () => {
    const long = { ...machine, box: BOX.filter(({ size }) => size >= 410) };
    expect(cellOf(long, axesOf([20], [3500]))).toMatchObject({ mark: 'too-rich', mains: [410, 410] });
  });

  it('is nothing where the next size is the next that is made', () => {
    expect(whole.mark).toBeNull();
  });

  it('cannot be told from a box of one size, but for its ends', () => {
    const one = { ...machine, box: [{ size: 410, count: 2 }] };
    expect(madeBox(one)).toBeNull();
    expect(cellOf(one)).toMatchObject({ mark: 'borrow', wanted: null });
  });

  it('is told by the person’s own list where there is one', () => {
    const jets = [400, 410, 425, 435, 445].map((size) => ({ size, area: size ** 1.1 }));
    const listed = {
      ...machine,
      marking: { kind: 'list', jets } as const,
      box: [410, 445].map((size) => ({ size, count: 2 })),
    };
    expect(madeBox(listed)!.map(({ size }) => size)).toEqual([400, 410, 425, 435, 445]);
    expect(cellOf(listed).mark).toBe('missing-size');
  });
});

describe('what else stands in a cell', () => {
  it('is the screw and the clip for that air, none where none was described, and never the trim', () => {
    const trimmed = {
      ...machine,
      trim: { lowest: 1, highest: 5, baseline: 3, richerPerPosition: ratio(0.02) },
    };
    const [plain, turned] = [machine, trimmed].map(
      (of) => expectOk(jetCard(of, axesOf([-20], [900]))).rows[0]![0]!,
    );
    expect(turned!.mains).toEqual(plain!.mains);
    expect(plain!.pilot!.turns).toBeGreaterThan(1);
    expect(plain!.needle!.groove).toBeGreaterThanOrEqual(3);
    const bare = expectOk(jetCard({ ...machine, pilot: null, needle: null }, axesOf([-20], [900])))
      .rows[0]![0]!;
    expect(bare).toMatchObject({ pilot: null, needle: null });
  });

  it('is not there where no plan can be made', () => {
    expect(jetCard({ ...machine, box: [] }, AXES)).toEqual({ ok: false, reason: { code: 'empty-box' } });
  });
});
