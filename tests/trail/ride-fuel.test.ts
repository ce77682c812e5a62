import { describe, expect, it } from 'vitest';
import { baselineSetting } from '@/lib/carb/baseline-setting';
import { expectOk } from '@/lib/result/result';
import { fuelRatio, rideFuel } from '@/lib/trail/ride-fuel';
import { planRide } from '@/lib/trail/ride-plan';
import { kelvinDifference, metre } from '@/lib/units/quantity';
import { airOf } from '../support/race-machine';
import { rideOf, rideRequest, valleyHours } from '../support/rides';
import { trailMachine } from '../support/trail-machine';

const proven = airOf(-10, 975, 0.8);
const machine = trailMachine({ baselineAir: proven });

describe('fuel over the baseline’s', () => {
  it('is the same in the baseline’s own air', () => {
    expect(fuelRatio(machine, baselineSetting(machine), proven)).toBeCloseTo(1, 12);
  });

  it('goes with the jet at one air: 420 for 410 is 2.4 % more', () => {
    const bigger = { mains: [420, 420], trim: null };
    expect(fuelRatio(machine, bigger, proven)).toBeCloseTo(420 / 410, 12);
  });

  it('counts staggered carburettors by their own jets', () => {
    const staggered = trailMachine({ baselineAir: proven, carburettors: [{ main: 400 }, { main: 420 }] });
    const setting = { mains: [420, 420], trim: null };
    expect(fuelRatio(staggered, setting, proven)).toBeCloseTo(840 / 820, 12);
  });

  it('with the mixture kept right goes with the dry air in the engine', () => {
    const cold = airOf(-30, 975, 0.8);
    const ideal = { response: { ...machine.response, pressureExponent: 0.5, temperatureExponent: 0.5 } };
    // By the orifice law a jet left alone passes the root of the density: (ρ/ρ0)^½, hand-worked.
    const left = fuelRatio({ ...machine, ...ideal }, baselineSetting(machine), cold);
    expect(left).toBeCloseTo(Math.sqrt(cold.density / proven.density), 9);
  });

  it('follows the air at the carburettor, not the weather', () => {
    const hood = { ...machine, intakeOffset: kelvinDifference(25) };
    const bare = fuelRatio(machine, baselineSetting(machine), airOf(-30, 975, 0.8));
    expect(fuelRatio(hood, baselineSetting(machine), airOf(-30, 975, 0.8))).toBeLessThan(bare);
  });
});

describe('fuel for the day', () => {
  const ride = {
    ...rideOf(['Lake', 120, 320, 15], ['Far shore', 300, 320, 60], ['Lake', 480, 320]),
    distance: metre(90_000),
  };
  const hours = valleyHours(Array.from({ length: 14 }, () => -10));
  const answer = expectOk(planRide(rideRequest({ machine, ride, hours })));

  it('counts the hours on the move, not the stops', () => {
    const fuel = rideFuel(machine, { ride, answer }, { kind: 'per-hour', litres: 10 });
    // 165 and 120 minutes.
    expect(fuel.litres).toBeCloseTo(4.75 * 10 * fuel.overBaseline, 9);
    expect(fuel.overBaseline).toBeCloseTo(answer.setting.mains[0]! / 410, 6);
    expect(fuel.ofTheAir).toBeCloseTo(1, 6);
  });

  it('counts the way where the consumption is per distance', () => {
    const consumption = { kind: 'per-distance', litresPerKilometre: 0.3 } as const;
    const fuel = rideFuel(machine, { ride, answer }, consumption);
    expect(fuel.litres).toBeCloseTo(27 * fuel.overBaseline, 9);
    const nowhere = { ...ride, distance: null };
    expect(rideFuel(machine, { ride: nowhere, answer }, consumption).litres).toBeNull();
  });
});
