import { describe, expect, it } from 'vitest';
import { boxFromRange } from '@/lib/carb/box';
import { expectOk } from '@/lib/result/result';
import { planRide, type RideRequest } from '@/lib/trail/ride-plan';
import { stopOptions } from '@/lib/trail/ride-stops';
import { ratio } from '@/lib/units/quantity';
import { airOf } from '../support/race-machine';
import { rideOf, rideRequest, valleyHours } from '../support/rides';
import { trailMachine } from '../support/trail-machine';

const machine = trailMachine({
  box: boxFromRange({ lowest: 340, highest: 540, step: 10, count: 2 }),
  baselineAir: airOf(-6, 930, 0.8),
  limits: { lean: ratio(0.02), rich: ratio(0.08), risk: ratio(0.05) },
});
const trimmed = {
  ...machine,
  trim: { lowest: 1, highest: 7, baseline: 4, richerPerPosition: ratio(0.02) },
};

/** Up in the morning and on over high ground for the day. */
const UP_AND_STAY = rideOf(
  ['Valley', 120, 320],
  ['Rim', 210, 1900, 5],
  ['Cairn', 420, 2000],
  ['Rim hut', 600, 1900],
);

const weighed = (request: RideRequest) => stopOptions(request, expectOk(planRide(request)), 20);

describe('whether a stop would be worth it', () => {
  it('a swap at the rim is, where the rest of the day is high', () => {
    const request = rideRequest({ machine, ride: UP_AND_STAY });
    const one = expectOk(planRide(request));
    const [best] = weighed(request).options;
    expect(best).toMatchObject({ act: 'swap', place: 1, before: one.setting });
    expect(best!.after.mains[0]).toBeLessThan(one.setting.mains[0]!);
    expect(best!.because).toBe('rich');
    expect(best!.saved).toBeGreaterThan(0.01);
  });

  it('is not where the valley is as cold when the ride comes back', () => {
    const even = valleyHours(Array.from({ length: 14 }, () => -12));
    const { options } = weighed(rideRequest({ machine, hours: even }));
    for (const { because } of options) expect(because).toBeNull();
  });

  it('a turn of the trim does it in a minute where there is one', () => {
    const { options } = weighed(rideRequest({ machine: trimmed, ride: UP_AND_STAY }));
    const trim = options.find(({ act }) => act === 'trim')!;
    expect(trim.before.mains).toEqual(trim.after.mains);
    expect(trim.after.trim).toBeLessThan(trim.before.trim!);
    expect(trim.because).not.toBeNull();
  });

  it('needs no swap where the trim reaches, and keeps the one setting in for the part that needs it', () => {
    const request = rideRequest({ machine: trimmed, ride: UP_AND_STAY });
    const one = expectOk(planRide(request));
    const { options } = weighed(request);
    expect(options.map(({ act }) => act)).toEqual(['trim']);
    for (const { before } of options) expect(before).toEqual(one.setting);
  });

  it('offers nothing that passes the lean limit after the stop', () => {
    const request = rideRequest({ machine, ride: UP_AND_STAY });
    const [best] = weighed(request).options;
    const box = [{ size: best!.after.mains[0]!, count: 2 }];
    const after = { ...UP_AND_STAY, stops: UP_AND_STAY.stops.slice(1), points: UP_AND_STAY.points.slice(1) };
    const { plan } = expectOk(planRide({ ...request, machine: { ...machine, box }, ride: after }));
    const on = plan.runs[0]!.setting.mains[0];
    expect(on).toBe(best!.after.mains[0]);
    for (const { chanceOfLean } of plan.runs) expect(chanceOfLean).toBeLessThanOrEqual(machine.limits.risk);
  });

  it('has nothing to say about a level ride of one leg', () => {
    const level = rideOf(['Lake', 180, 320], ['Far shore', 300, 320]);
    expect(weighed(rideRequest({ machine, ride: level })).options).toEqual([]);
  });
});
