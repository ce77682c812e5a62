import { expect, it } from 'vitest';
import { intakeCost } from '@/lib/power/intake-cost';
import { kelvinDifference } from '@/lib/units/quantity';
import { airOf, relative, station } from '../support/air';

it('air 30 K warmer from under the hood at -23 °C costs 5.5 % of power', () => {
  // sqrt(250.15/280.15) = 0.94494: the temperature factor of SAE J607 and J1349; the water in such air does not count.
  const air = airOf(-23, station(990), relative(0.5));
  const cost = intakeCost(air, { from: kelvinDifference(0), to: kelvinDifference(30) });
  expect(cost).toBeCloseTo(-0.05506, 4);
});

it('the same intake costs nothing, and cooler air brings what warmer air costs', () => {
  const air = airOf(-10, station(990), relative(0.5));
  expect(intakeCost(air, { from: kelvinDifference(10), to: kelvinDifference(10) })).toBe(0);
  const cost = intakeCost(air, { from: kelvinDifference(3), to: kelvinDifference(28) });
  const gain = intakeCost(air, { from: kelvinDifference(28), to: kelvinDifference(3) });
  expect((1 + cost) * (1 + gain)).toBeCloseTo(1, 12);
  expect(cost).toBeLessThan(0);
});
