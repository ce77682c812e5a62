import { describe, expect, it } from 'vitest';
import { airAt } from '@/lib/air/air-from';
import { boxFromRange } from '@/lib/carb/box';
import { drifts } from '@/lib/carb/drift';
import { LIMIT_CHOICES } from '@/lib/carb/limits';
import { lapse } from '@/lib/hours/elevation-shift';
import { expectOk } from '@/lib/result/result';
import { addMinutes } from '@/lib/time/instant';
import { planLegs, planRide, runsOfRide } from '@/lib/trail/ride-plan';
import { rideSeries } from '@/lib/trail/ride-series';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { ratio } from '@/lib/units/quantity';
import { idealSizes } from '@/tests/support/ideal-sizes';
import { airOf } from '../support/race-machine';
import { MORNING, rideOf, rideRequest, valleyHours, WINTER_DAY } from '../support/rides';
import { trailMachine } from '../support/trail-machine';

const machine = trailMachine({
  baselineAir: airOf(-6, 930, 0.8),
  box: boxFromRange({ lowest: 340, highest: 540, step: 10, count: 2 }),
});

describe('the air along a ride', () => {
  it('is the hour of the valley moved to where the rider is', () => {
    const { ride, hours, fall } = rideRequest();
    const series = expectOk(rideSeries(ride, hours, fall));
    const pass = series.hours.find(({ at }) => at === addMinutes(MORNING, 540))!;
    // 1130 m higher at 6.5 K/km; pressure by ISO 2533:1975 eq. 12 from -6.5 °C: (259.305/266.65)^5.25588.
    expect(pass.temperature).toBeCloseTo(celsiusToKelvin(-6.5) - 7.345, 9);
    expect(pass.pressure / 97_500).toBeCloseTo((259.305 / 266.65) ** 5.25588, 6);
  });

  it('has every place in it, so that no thickest or thinnest point is missed', () => {
    const { ride, hours, fall } = rideRequest();
    const times = new Set(expectOk(rideSeries(ride, hours, fall)).hours.map(({ at }) => at));
    for (const { arrive, leave } of ride.stops) {
      expect(times.has(arrive)).toBe(true);
      expect(times.has(leave)).toBe(true);
    }
  });

  it('says which hours are missing', () => {
    const short = { ...WINTER_DAY, hours: WINTER_DAY.hours.slice(0, 8) };
    expect(planRide(rideRequest({ hours: short }))).toEqual({
      ok: false,
      reason: {
        code: 'hours-do-not-cover-ride',
        start: addMinutes(MORNING, 120),
        end: addMinutes(MORNING, 660),
        hoursStart: MORNING,
        hoursEnd: addMinutes(MORNING, 420),
      },
    });
    expect(planRide(rideRequest({ hours: { ...WINTER_DAY, hours: [] } }))).toMatchObject({
      ok: false,
      reason: { hoursStart: null, hoursEnd: null },
    });
  });
});

describe('one setting for a whole ride', () => {
  const request = rideRequest({ machine });
  const answer = expectOk(planRide(request));

  it('is one setting on every leg', () => {
    for (const { setting } of answer.plan.runs) expect(setting).toEqual(answer.setting);
  });

  it('keeps the machine’s lean limit on every leg, and the next smaller jet does not', () => {
    const { risk } = machine.limits;
    for (const { chanceOfLean } of answer.plan.runs) expect(chanceOfLean).toBeLessThanOrEqual(risk);
    const smaller = answer.setting.mains.map((main) => main - 10);
    const onSmaller = expectOk(
      planLegs(
        { ...request, machine: { ...machine, box: [{ size: smaller[0]!, count: 2 }] } },
        {
          series: expectOk(rideSeries(request.ride, request.hours, request.fall)),
          runs: runsOfRide(request.ride),
          fitted: { mains: smaller, trim: null },
          worthIt: ratio(0),
        },
      ),
    );
    expect(Math.max(...onSmaller.runs.map(({ chanceOfLean }) => chanceOfLean))).toBeGreaterThan(risk);
  });

  it('finds the thickest air in the valley at dawn and the thinnest on the pass', () => {
    expect(answer.thickest.at).toBe(addMinutes(MORNING, 120));
    const onThePass = [addMinutes(MORNING, 270), addMinutes(MORNING, 540)];
    expect(onThePass).toContain(answer.thinnest.at);
    const ideals = answer.plan.hours.map(({ ideal }) => ideal[0]!);
    expect(answer.thickest.ideal[0]).toBe(Math.max(...ideals));
  });

  it('asks in its thickest air for the ideal of that air alone', () => {
    const air = airAt({
      temperature: celsiusToKelvin(-15.5),
      pressure: hectopascalToPascal(975),
      relativeHumidity: ratio(0.8),
      pressureFrom: 'station',
    });
    expect(answer.thickest.ideal[0]).toBeCloseTo(idealSizes(machine, air)[0]!, 6);
  });

  it('costs in its thinnest air what its drift there costs', () => {
    const drift = drifts(machine, answer.setting, answer.thinnest.air)[0]!;
    expect(drift).toBeGreaterThan(0.05);
    expect(answer.cost.drift).toBeCloseTo(drift, 6);
    expect(answer.cost.powerLost).toBeCloseTo(2 * drift ** 2, 6);
  });

  it('is larger where cold lies in the valley, and larger yet on a colder day', () => {
    const mains = (change: Parameters<typeof rideRequest>[0]) =>
      expectOk(planRide(rideRequest({ machine, ...change }))).setting.mains[0]!;
    // The hours told for the pass: an inversion then makes the valley colder than they say.
    const atPass = { ...WINTER_DAY, elevation: request.ride.stops[1]!.elevation };
    const usual = mains({ hours: atPass });
    const inverted = mains({ hours: atPass, fall: lapse(-0.01) });
    expect(inverted).toBeGreaterThan(usual);
    const colder = valleyHours(WINTER_DAY.hours.map(() => -35));
    expect(mains({ hours: colder })).toBeGreaterThan(mains({}));
  });

  it('leaves the baseline in where it is safe all the way', () => {
    const level = rideOf(['Lake', 180, 320], ['Far shore', 300, 320]);
    const proven = trailMachine({ baselineAir: airOf(-11, 975, 0.8), limits: LIMIT_CHOICES.race });
    const hours = valleyHours(Array.from({ length: 14 }, () => -10));
    const { setting, plan } = expectOk(planRide(rideRequest({ machine: proven, ride: level, hours })));
    expect(setting).toEqual(plan.baseline);
  });

  it('plans a ride of last week as if it were still to come', () => {
    const late = expectOk(planRide(rideRequest({ machine, now: addMinutes(MORNING, 60 * 24 * 7) })));
    expect(late.setting).toEqual(answer.setting);
    expect(late.plan.runs.every(({ state }) => state === 'planned')).toBe(true);
  });

  it('crosses midnight, a pass above 3,000 m and a shore below the sea', () => {
    const ride = rideOf(['Shore', 0, -410], ['Plateau', 240, 3_600], ['Shore', 420, -410]);
    const wide = trailMachine({
      box: [330, 350, 370, 390, 410, 430, 450].map((size) => ({ size, count: 2 })),
    });
    const hours = valleyHours([4, 2, 0, -2, -3, -3, -2, 0]);
    const { plan, thinnest } = expectOk(planRide(rideRequest({ machine: wide, ride, hours })));
    for (const { chanceOfLean } of plan.runs) expect(chanceOfLean).toBeLessThanOrEqual(wide.limits.risk);
    expect(thinnest.at).toBe(addMinutes(MORNING, 240));
    // ISO 2533:1975 eq. 12 from -3 °C at 320 m: (248.83/270.15)^5.25588.
    expect(thinnest.air.pressure / 97_500).toBeCloseTo((248.83 / 270.15) ** 5.25588, 6);
  });
});
