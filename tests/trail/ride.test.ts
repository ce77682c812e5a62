import { describe, expect, it } from 'vitest';
import { addMinutes } from '@/lib/time/instant';
import { elevationAt, legsOf, movingMs, pointsBetween, rideProblem, withStop } from '@/lib/trail/ride';
import { MORNING, VALLEY_PASS_AND_BACK as RIDE, rideOf } from '../support/rides';

const at = (minutes: number) => addMinutes(MORNING, minutes);

describe('a ride between places', () => {
  it('has a leg between each two, and does not count the stops as riding', () => {
    expect(legsOf(RIDE).map(({ from, to }) => [from.name, to.name])).toEqual([
      ['Valley', 'Pass'],
      ['Pass', 'Hut'],
      ['Hut', 'Pass again'],
      ['Pass again', 'Valley'],
    ]);
    expect(movingMs(RIDE) / 60_000).toBe(150 + 100 + 105 + 120);
  });

  it('climbs straight, stays level while it stands, and is held at its ends', () => {
    expect(elevationAt(RIDE.points, at(195))).toBeCloseTo((320 + 1450) / 2, 9);
    expect(elevationAt(RIDE.points, at(280))).toBe(1450);
    expect(elevationAt(RIDE.points, at(0))).toBe(320);
    expect(elevationAt(RIDE.points, at(900))).toBe(320);
  });

  it('comes later by what a stop is made longer', () => {
    const stopped = withStop(RIDE, 1, 35);
    expect(stopped.stops.map(({ arrive }) => (arrive - MORNING) / 60_000)).toEqual([120, 270, 405, 555, 675]);
    expect(elevationAt(stopped.points, at(304))).toBe(1450);
    expect(elevationAt(stopped.points, at(675))).toBe(320);
    for (const [i, point] of stopped.points.entries())
      if (i > 0) expect(point.at).toBeGreaterThan(stopped.points[i - 1]!.at);
  });

  it('is left alone by a stop that is long enough', () => {
    expect(withStop(RIDE, 2, 30)).toBe(RIDE);
  });

  it('does not change the ride it was given', () => {
    const before = structuredClone(RIDE);
    withStop(RIDE, 1, 60);
    expect(RIDE).toEqual(before);
  });
});

describe('what is no ride', () => {
  it('is one place, a place reached too early, or too long a day', () => {
    expect(rideProblem(rideOf(['Valley', 0, 320]).stops)).toEqual({ code: 'too-few-places' });
    expect(rideProblem(rideOf(['Valley', 0, 320, 90], ['Pass', 60, 1450]).stops)).toEqual({
      code: 'place-too-early',
      place: 1,
    });
    expect(rideProblem(rideOf(['Valley', 0, 320], ['Pass', 60 * 37, 1450]).stops)).toEqual({
      code: 'ride-too-long',
      limitHours: 36,
    });
    expect(rideProblem(RIDE.stops)).toBeNull();
  });

  it('is a stop that ends before it begins', () => {
    const [first, ...rest] = RIDE.stops;
    const backwards = [{ ...first!, leave: at(100) }, ...rest];
    expect(rideProblem(backwards)).toEqual({ code: 'stop-negative', place: 0 });
  });

  it('is more places than a plan has runs for', () => {
    const many = Array.from({ length: 42 }, (_, i) => ['x', i * 10, 300] as const);
    expect(rideProblem(rideOf(...many).stops)).toEqual({ code: 'too-many-places', limit: 41 });
    expect(pointsBetween(rideOf(...many).stops)).toHaveLength(42);
  });
});
