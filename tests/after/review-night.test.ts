import { describe, expect, it } from 'vitest';
import type { NightReview } from '@/lib/after/review';
import { reviewNight } from '@/lib/after/review-night';
import type { Setting } from '@/lib/carb/machine';
import { nightFrom } from '@/lib/night/night';
import { nightToReview } from '@/lib/night/night-to-review';
import { expectOk } from '@/lib/result/result';
import { MORNING_AFTER, type Past, pastNight } from '@/tests/support/past-night';

const ALL = [0, 1, 2, 3, 4, 5, 6, 7];
const BASELINE: Setting = { mains: [410, 400, 410], trim: null };
const LARGEST: Setting = { mains: [460, 460, 460], trim: null };

function review(past: Past = {}): NightReview {
  return expectOk(reviewNight(nightToReview(expectOk(nightFrom(pastNight(past))), MORNING_AFTER)));
}

describe('the forecast of a night that is over', () => {
  it('is not judged where nobody read the air, or no reading can be held against it', () => {
    expect(review().forecast).toEqual({ code: 'no-readings' });
    // 20 K off and nobody stood by it: sun on the sensor, the tow vehicle.
    expect(review({ readings: [[2, 20]] }).forecast).toEqual({ code: 'none-counts', readings: 1 });
  });

  it('has one reading’s word for its hour, and a spread only from four readings on', () => {
    const one = review({ readings: [[2, -3]] }).forecast;
    expect(one).toMatchObject({
      code: 'read',
      count: 1,
      spread: null,
      hours: 'typed',
      withinThermometer: false,
    });
    const three = review({
      readings: [
        [0, -2],
        [2, -3],
        [4, -4],
      ],
    }).forecast;
    expect(three).toMatchObject({ code: 'read', count: 3, spread: null });
    const four = review({
      readings: [
        [0, -2],
        [2, -3],
        [4, -4],
        [6, -3],
      ],
    }).forecast;
    if (four.code !== 'read') throw new Error(four.code);
    expect(four.bias).toBeCloseTo(3, 6);
    expect(four.least).toBeCloseTo(2, 6);
    expect(four.most).toBeCloseTo(4, 6);
    // Sample sd of 2, 3, 4, 3: √(2/3), by hand.
    expect(four.spread).toBeCloseTo(Math.sqrt(2 / 3), 6);
  });

  it('within what a thermometer may be off is not called off', () => {
    expect(
      review({
        readings: [
          [0, 0.4],
          [4, -0.6],
        ],
      }).forecast,
    ).toMatchObject({ withinThermometer: true });
    expect(
      review({
        readings: [
          [0, 0.4],
          [4, -1.4],
        ],
      }).forecast,
    ).toMatchObject({ withinThermometer: false });
  });
});

describe('each run of a night that is over', () => {
  it('keeps what it was planned on and for, although the accepted plan follows what was told', () => {
    const { runs } = review({ told: ALL, kept: BASELINE });
    expect(runs.map(({ planned }) => planned?.setting.mains[0])).not.toEqual(ALL.map(() => 410));
    expect(runs.every(({ planned }) => planned?.temperature !== null)).toBe(true);
    expect(runs.every(({ made }) => made?.told === true && made.setting.mains[0] === 410)).toBe(true);
  });

  it('that nobody told is a guess and says so', () => {
    const { runs } = review({ told: [0, 1] });
    expect(runs.map(({ made }) => made?.told)).toEqual([true, true, ...ALL.slice(2).map(() => false)]);
  });

  it('stands by the air of all readings, also those of after it, and tells what is left unsure', () => {
    const plain = review({ told: ALL });
    const read = review({ told: ALL, readings: [[4, -4]] });
    const air = ({ runs }: NightReview, run: number) => runs[run]!.air!;
    expect(air(read, 3).temperature).toBeLessThan(air(plain, 3).temperature - 2);
    expect(air(read, 4).sd).toBeLessThan(1);
    expect(air(read, 0).sd).toBeGreaterThan(air(read, 3).sd);
    expect(read.runs[5]!.stood!.leanest).toBeLessThan(plain.runs[5]!.stood!.leanest);
  });

  it('is found in the log by its start', () => {
    const { runs, known } = review({
      told: ALL,
      verdicts: [
        [3, 'rich'],
        [5, null],
      ],
    });
    expect(runs.map(({ log }) => log?.verdict)).toEqual([
      undefined,
      undefined,
      undefined,
      'rich',
      undefined,
      null,
      undefined,
      undefined,
    ]);
    expect(known).toEqual({ readings: 0, verdicts: 1 });
  });
});

describe('the night made three ways', () => {
  it('is not compared where nothing was read and nothing judged', () => {
    expect(review({ told: ALL }).compared).toBeNull();
    expect(review({ told: ALL, verdicts: [[3, null]] }).compared).toBeNull();
    expect(review({ told: ALL, verdicts: [[3, 'right']] }).compared).not.toBeNull();
  });

  it('shows what keeping the baseline cost, and that perfect knowledge keeps every limit', () => {
    const { compared } = review({
      readings: [
        [0, -2],
        [4, -3.5],
        [7, -3],
      ],
      told: ALL,
      kept: BASELINE,
    });
    expect(compared?.made).toMatchObject({ swaps: 0, rich: [] });
    expect(compared?.made?.lean.length).toBeGreaterThan(compared?.planned?.lean.length ?? 99);
    expect(compared?.perfect).toMatchObject({ lean: [], rich: [] });
    expect(compared?.untold).toBe(0);
  });

  it('counts runs far too rich, and the power they lost', () => {
    const { compared } = review({
      readings: [
        [0, 0],
        [4, 0],
      ],
      told: ALL,
      kept: LARGEST,
    });
    expect(compared?.made).toMatchObject({ swaps: 0, lean: [], rich: ALL });
    expect(compared!.made!.loss).toBeGreaterThan(compared!.perfect.loss + 0.01);
  });

  it('judges only what is known: no plan accepted, nothing told', () => {
    const { compared } = review({ readings: [[0, 0]], accepted: false });
    expect(compared).toMatchObject({ made: null, planned: null, untold: 8 });
    const part = review({ readings: [[0, 0]], told: [0, 1] });
    expect(part.compared?.made).not.toBeNull();
    expect(part.compared?.untold).toBe(6);
  });

  it('is never safer as made than perfect knowledge where nights are drawn at random', () => {
    for (const off of [-6, -4, -2, 0, 2, 4]) {
      const { compared } = review({
        readings: [
          [1, off],
          [5, off],
        ],
        told: ALL,
      });
      expect(compared!.perfect.lean.length).toBeLessThanOrEqual(compared!.made!.lean.length);
    }
  });

  it('leaves out what the machine was not in, and what the hours do not reach', () => {
    const past = pastNight({ readings: [[0, 0]], told: [0, 1, 2] });
    const { value } = past.event;
    const out = { ...value, outFrom: { [past.machine.id]: value.event.runs[3]!.start } };
    const short = {
      ...value,
      typed: {
        ...value.typed!,
        hours: value.typed!.hours.filter(
          ({ time }) => Date.parse(time) < Date.parse(value.event.runs[4]!.start),
        ),
      },
    };
    const of = (record: typeof value) =>
      expectOk(
        reviewNight(
          nightToReview(
            expectOk(nightFrom({ ...past, event: { ...past.event, value: record } })),
            MORNING_AFTER,
          ),
        ),
      );
    expect(
      of(out)
        .runs.slice(3)
        .every(({ made, stood }) => made === null && stood === null),
    ).toBe(true);
    expect(of(out).compared?.untold).toBe(0);
    const cut = of(short).runs;
    expect(cut.at(-1)).toMatchObject({ air: null, stood: null });
    expect(cut[0]?.stood).not.toBeNull();
  });
});
