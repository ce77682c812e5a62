import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { forecastReaches } from '@/lib/trail/forecast-reach';
import { pastHours } from '@/lib/trail/past-hours';
import { profileFromText, profileToText } from '@/lib/trail/profile-text';
import { planRide } from '@/lib/trail/ride-plan';
import { type GpxTrack, profileOf, withHeights } from '@/lib/trail/track';
import { rideOfTrack } from '@/lib/trail/track-ride';
import { kelvin, metre, pascal, ratio } from '@/lib/units/quantity';
import { rideRequest, VALLEY_PASS_AND_BACK } from '../support/rides';
import { trailMachine } from '../support/trail-machine';

const START = instant(Date.UTC(2027, 0, 16, 14));

const flat = (count: number): GpxTrack => ({
  name: '',
  route: false,
  segments: [
    Array.from({ length: count }, (_, i) => ({
      latitude: 47 + i / 10_000,
      longitude: -93,
      elevation: null,
      at: instant(START + i * 10_000),
    })),
  ],
});

describe('a track without heights', () => {
  it.each([2, 57, 100, 101, 5000])(
    'of %i points has at most a hundred to be asked about, its ends among them',
    (count) => {
      const { spots, points } = profileOf(flat(count));
      expect(spots.length).toBe(Math.min(100, count));
      expect([spots[0]!.along, spots.at(-1)!.along]).toEqual([0, points.at(-1)!.along]);
      for (const [i, { along }] of spots.entries())
        if (i > 0) expect(along).toBeGreaterThan(spots[i - 1]!.along);
    },
  );

  it('that stands in one place is asked about once or twice, not a hundred times too many', () => {
    const track = flat(300);
    const still = track.segments[0]!.map((point) => ({ ...point, latitude: 47 }));
    expect(profileOf({ ...track, segments: [still] }).spots.length).toBeLessThanOrEqual(100);
  });

  it('becomes a ride with the heights of the ground, also after a reload', () => {
    const kept = profileFromText(profileToText(profileOf(flat(5000))))!;
    expect(rideOfTrack(kept, { start: null, speed: null, heights: null })).toMatchObject({ ok: false });
    // A ramp over the whole way: every point between two that were asked must lie on it.
    const length = kept.points.at(-1)!.along;
    const asked = withHeights(
      kept,
      kept.spots.map(({ along }) => metre(300 + (900 * along) / length)),
    );
    for (const { along, elevation } of asked.points)
      expect(elevation).toBeCloseTo(300 + (900 * along) / length, 6);
    expect(asked).toMatchObject({ elevations: 'asked', spots: [] });
    const ride = expectOk(rideOfTrack(asked, { start: null, speed: null, heights: null }));
    expect([ride.stops[0]!.elevation, ride.stops.at(-1)!.elevation]).toEqual([300, 1200]);
  });

  it('with heights of its own has nothing to be asked about', () => {
    const track = flat(10);
    const high = track.segments[0]!.map((point) => ({ ...point, elevation: metre(500) }));
    expect(profileOf({ ...track, segments: [high] }).spots).toEqual([]);
  });
});

describe('a forecast', () => {
  it('reaches from yesterday to ten days ahead', () => {
    const reached = (hours: number) => forecastReaches(instant(START + hours * HOUR_MS), START);
    expect([-25, -24, 0, 240, 241].map(reached)).toEqual([false, true, true, true, false]);
  });
});

describe('past winters', () => {
  const air = {
    temperature: kelvin(260),
    pressure: pascal(95_000),
    relativeHumidity: ratio(0.8),
    elevation: metre(320),
  };
  const credit = { name: 'past winters', attribution: 'x', attributionUrl: 'https://example.org/' };

  it('are the same air in every hour of the ride, at its own height', () => {
    const ride = VALLEY_PASS_AND_BACK;
    const { hours, elevation } = pastHours(ride, air, credit);
    expect(hours[0]!.at).toBeLessThanOrEqual(ride.points[0]!.at);
    expect(hours.at(-1)!.at).toBeGreaterThanOrEqual(ride.points.at(-1)!.at);
    expect(new Set(hours.map(({ temperature, pressure }) => `${temperature} ${pressure}`)).size).toBe(1);
    expect(elevation).toBe(320);
  });

  it('plan a ride, however far ahead it lies, with no more doubt than one of today', () => {
    const machine = trailMachine();
    const request = rideRequest({ machine });
    const hours = pastHours(request.ride, air, credit);
    const today = expectOk(planRide({ ...request, hours }));
    const longBefore = instant(request.ride.points[0]!.at - 200 * 24 * HOUR_MS);
    const ahead = expectOk(planRide({ ...request, hours, now: longBefore }));
    expect(ahead.setting).toEqual(today.setting);
    expect(ahead.plan.runs.map(({ chanceOfLean }) => chanceOfLean)).toEqual(
      today.plan.runs.map(({ chanceOfLean }) => chanceOfLean),
    );
  });
});
