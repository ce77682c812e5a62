import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airAt } from '@/lib/air/air-from';
import { fillDensities, type StateColumns } from '@/lib/air/batch';
import { kelvin, pascal, ratio } from '@/lib/units/quantity';
import { expectWithin } from '../support/air';

type State = readonly [temperature: number, pressure: number, relativeHumidity: number];

const columns = (states: readonly State[]): StateColumns => ({
  temperature: Float64Array.from(states, ([t]) => t),
  pressure: Float64Array.from(states, ([, p]) => p),
  relativeHumidity: Float64Array.from(states, ([, , h]) => h),
});

function densities(states: readonly State[]) {
  const output = { density: new Float64Array(states.length), dryDensity: new Float64Array(states.length) };
  fillDensities(columns(states), output);
  return output;
}

function expectAgreement(states: readonly State[]): void {
  const { density, dryDensity } = densities(states);
  states.forEach(([t, p, h], i) => {
    const air = airAt({
      temperature: kelvin(t),
      pressure: pascal(p),
      relativeHumidity: ratio(h),
      pressureFrom: 'station',
    });
    expectWithin(density[i]!, air.density, 1e-12);
    expectWithin(dryDensity[i]!, air.dryDensity, 1e-12);
  });
}

describe('many states at once', () => {
  it('agree with one at a time to 1e-12, in all weather and under a hot hood', () => {
    // -90 °C after a cold intake to 100 °C under the hood, thin to thick air. Above 45 °C air is far from saturated.
    const temperature = fc.double({ min: 183.15, max: 373.15, noNaN: true });
    const state = fc
      .tuple(
        temperature,
        fc.double({ min: 45_000, max: 110_000, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
      )
      .map(([t, p, h]): State => [t, p, t > 318.15 ? h * 0.05 : h]);
    fc.assert(
      fc.property(fc.array(state, { minLength: 1, maxLength: 50 }), (states) => expectAgreement(states)),
      { numRuns: 300, seed: 71 },
    );
  });

  it('agree on a fine grid, at the joints of the table and at 0 °C', () => {
    const states: State[] = [];
    for (let i = 0; i <= 4_800; i++) states.push([233.15 + i / 60, 70_000 + 7 * i, (i % 11) / 10]);
    for (const t of [273.15 - 1e-9, 273.15, 273.15 + 1e-9, 273.35, 273.149_999]) states.push([t, 95_000, 1]);
    expectAgreement(states);
  });

  it('agree outside the table too', () => {
    expectAgreement([
      [150, 60_000, 0.5],
      [173.149, 60_000, 0.5],
      [403.2, 100_000, 0.001],
      [450, 100_000, 0.0001],
    ]);
  });

  it('of no states are no densities', () => {
    expect(densities([]).density.length).toBe(0);
  });

  it('leave the states as they were', () => {
    const input = columns([[253.15, 99_000, 0.8]]);
    fillDensities(input, { density: new Float64Array(1), dryDensity: new Float64Array(1) });
    expect(input).toEqual(columns([[253.15, 99_000, 0.8]]));
  });

  it('refuse columns of different lengths', () => {
    const input = { ...columns([[253.15, 99_000, 0.8]]), pressure: new Float64Array(2) };
    const room = { density: new Float64Array(2), dryDensity: new Float64Array(2) };
    expect(() => fillDensities(input, room)).toThrow(RangeError);
    expect(() =>
      fillDensities(columns([[253.15, 99_000, 0.8]]), { ...room, density: new Float64Array(0) }),
    ).toThrow(RangeError);
  });
});
