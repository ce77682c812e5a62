import { describe, expect, it } from 'vitest';
import type { Machine } from '@/lib/carb/machine';
import type { Hour } from '@/lib/hours/series';
import { timeOfShare } from '@/lib/plan/crossings';
import { addPassed } from '@/lib/plan/first-passage';
import { gaussLegendre } from '@/lib/plan/gauss-legendre';
import { meanLogIdeal } from '@/lib/plan/machine-need';
import { prepareNight } from '@/lib/plan/night';
import { normalBelow } from '@/lib/plan/normal';
import { chancesPassed, type Stretch } from '@/lib/plan/passage';
import { viewOf } from '@/lib/plan/view';
import { MINUTE_MS } from '@/lib/time/instant';
import { kelvinDifference } from '@/lib/units/quantity';
import { plainAir, plainIdeals } from '@/tests/support/plain-draws';
import { COLD_NIGHT, machineOf, requestOf, seriesOf } from '@/tests/support/plan-cases';

const DRAWS = 20_000;

/** Chance of having been above by each instant of a stretch, counted. */
function countPassed(rows: readonly Float64Array[], stretch: Stretch, threshold: number): Float64Array {
  const { from, to, rising } = stretch;
  const passed = new Float64Array(to - from + 1);
  for (const row of rows) {
    const inside = row.subarray(from, to + 1);
    const first = (rising ? inside : inside.toReversed()).findIndex((ideal) => ideal > threshold);
    if (first !== -1) for (let k = first; k < passed.length; k++) passed[k]! += 1 / rows.length;
  }
  return passed;
}

function hoursOf(given: Partial<Hour>) {
  return seriesOf(
    COLD_NIGHT.hours.map(({ temperature }) => temperature - 273.15),
    given,
  );
}

const CASES: readonly { name: string; machine?: Partial<Machine>; series?: typeof COLD_NIGHT }[] = [
  { name: 'a night from a forecast' },
  { name: 'a night from an ensemble', series: hoursOf({ spread: kelvinDifference(1.2) }) },
  { name: 'a baseline that is not sure', machine: { baselineShift: { log: 0.004, sd: 0.012 } } },
  { name: 'a carburettor in warm air', machine: { intakeOffset: kelvinDifference(12) } },
];

describe('The time of a passage', () => {
  for (const { name, machine: given, series } of CASES)
    it(`is that of ${DRAWS} plain draws in ${name}: the middle to five minutes, all of it to 2.5 % of cases`, () => {
      const machine = machineOf(given);
      const request = requestOf({ machine, ...(series === undefined ? {} : { series }) });
      const night = prepareNight(request);
      const { need, breathed } = viewOf(machine, night);
      const [curve, track] = [breathed.grid, night.grid];
      const mean = meanLogIdeal(need, curve);
      const rows: Float64Array[] = [];
      plainIdeals(machine, plainAir(track), {
        draws: DRAWS,
        each: (ideals) => rows.push(Float64Array.from(ideals)),
      });
      const top = mean.indexOf(Math.max(...mean));
      for (const stretch of [
        { from: 0, to: top, rising: true },
        { from: top, to: mean.length - 1, rising: false },
      ]) {
        // Near the middle of the way up, so that most cases pass within the stretch.
        const quiet = mean[stretch.rising ? 0 : mean.length - 1]!;
        const threshold = quiet + 0.45 * (mean[top]! - quiet);
        const claimed = chancesPassed({ machine: need, curve, track, mean }, stretch, threshold);
        const counted = countPassed(rows, stretch, threshold);
        // A passage outside the stretch is told as one at its open end.
        const within = (time: number) =>
          Math.min(Math.max(time, track.at[stretch.from]!), track.at[stretch.to]!);
        const [told, found] = [claimed, counted].map((passed) =>
          within(timeOfShare(track.at, stretch, { passed, share: 0.5 })),
        ) as [number, number];
        expect(Math.abs(told - found) / MINUTE_MS, `${stretch.rising}: ${told} ${found}`).toBeLessThan(5);
        // In times the ends of the range cannot be compared where the curve of cases runs flat.
        for (const [k, share] of claimed.entries())
          expect(Math.abs(share - counted[k]!), `${stretch.rising} ${k}`).toBeLessThan(0.025);
      }
    }, 60_000);
});

describe('The first passage of a Markov sequence', () => {
  const passedBy = (boundary: readonly number[], kept: readonly number[]) => {
    const passed = new Float64Array(boundary.length);
    addPassed({ boundary: Float64Array.from(boundary), kept: Float64Array.from(kept) }, 1, passed);
    return [...passed];
  };

  it('is the normal tail at the first step, and a product where nothing is kept', () => {
    const [first, second] = passedBy([1, 0.5], [0]);
    expect(first).toBeCloseTo(normalBelow(-1), 6);
    expect(second).toBeCloseTo(1 - normalBelow(1) * normalBelow(0.5), 3);
  });

  it('of two correlated normals above 0 is known: 1 - (1/4 + asin(ρ)/2π) (Sheppard 1899)', () => {
    for (const rho of [0.3, 0.7, 0.94, 0.98])
      expect(passedBy([0, 0], [rho])[1]).toBeCloseTo(0.75 - Math.asin(rho) / (2 * Math.PI), 3);
  });

  it('never comes where the boundary is out of reach, and has come where it is below everything', () => {
    expect(passedBy([9, 9], [0.9])).toEqual([0, 0]);
    expect(passedBy([9, -9, 9], [0.9, 0.9])).toEqual([0, 1, 1]);
    expect(passedBy([Number.NEGATIVE_INFINITY], [])).toEqual([1]);
    expect(passedBy([Number.POSITIVE_INFINITY], [])).toEqual([0]);
  });
});

describe('A Gauss-Legendre rule', () => {
  it('has the published places and weights, and integrates polynomials exactly', () => {
    // Abramowitz & Stegun, table 25.4, n = 3.
    expect([...gaussLegendre(3).places].sort((a, b) => a - b)[2]).toBeCloseTo(0.774596669241483, 12);
    expect(gaussLegendre(3).weights[1]).toBeCloseTo(0.888888888888889, 12);
    const { places, weights } = gaussLegendre(30);
    const sum = (power: number) => places.reduce((total, x, i) => total + weights[i]! * x ** power, 0);
    expect(sum(0)).toBeCloseTo(2, 12);
    expect(sum(58)).toBeCloseTo(2 / 59, 12);
  });
});
