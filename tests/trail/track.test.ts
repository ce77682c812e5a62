import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { joinedDays } from '@/lib/trail/join-days';
import { legsOf, movingMs } from '@/lib/trail/ride';
import { distanceBetween, type GpxTrack, profileOf, simplified, type TrackPoint } from '@/lib/trail/track';
import { rideOfTrack, type TrackChoice } from '@/lib/trail/track-ride';
import { metre, speedMs } from '@/lib/units/quantity';

const START = instant(Date.UTC(2027, 0, 16, 14));
const AS_RECORDED: TrackChoice = { start: null, speed: null, heights: null };

const point = (minutes: number | null, north: number, height: number | null): TrackPoint => ({
  latitude: 47 + north,
  longitude: -93,
  elevation: height === null ? null : metre(height),
  at: minutes === null ? null : instant(START + minutes * 60_000),
});
const track = (...segments: readonly (readonly TrackPoint[])[]): GpxTrack => ({
  name: 'T',
  segments,
  route: false,
});

describe('distance over ground', () => {
  it('is 111.195 km for a degree of latitude on a sphere of the mean radius', () => {
    // π/180 × 6371.0088 km.
    const a = { latitude: 47, longitude: -93 };
    expect(distanceBetween(a, { latitude: 48, longitude: -93 })).toBeCloseTo(111_195.08, 1);
  });

  it('is that of the standard example, 36.12° N 86.67° W to 33.94° N 118.40° W: 2887.26 km on 6372.8 km', () => {
    // Widely published haversine example (BNA to LAX), from memory; scaled to the radius used here.
    const d = distanceBetween({ latitude: 36.12, longitude: -86.67 }, { latitude: 33.94, longitude: -118.4 });
    expect(d / 1000).toBeCloseTo((2887.26 * 6371.0088) / 6372.8, 1);
  });

  it('is nothing to the same place and short over the date line', () => {
    const a = { latitude: -45, longitude: 179.999 };
    expect(distanceBetween(a, a)).toBe(0);
    expect(distanceBetween(a, { latitude: -45, longitude: -179.999 })).toBeLessThan(200);
  });
});

describe('the profile of a track', () => {
  it('counts the way between two pieces and fills heights straight over distance', () => {
    const profile = profileOf(
      track(
        [point(0, 0, 300), point(10, 0.1, null), point(20, 0.2, 500)],
        [point(40, 0.3, null), point(50, 0.4, 900)],
      ),
    );
    expect(profile.points.map(({ elevation }) => Math.round(elevation!))).toEqual([300, 400, 500, 700, 900]);
    expect(profile.points.at(-1)!.along).toBeCloseTo(0.4 * 111_195.08, 0);
    expect(profile).toMatchObject({ elevations: 'some', timed: true, segments: 2, pointsInFile: 5 });
  });

  it('leaves out points whose clock ran backwards', () => {
    const profile = profileOf(
      track([point(0, 0, 300), point(20, 0.1, 310), point(5, 0.15, 320), point(30, 0.2, 330)]),
    );
    expect(profile.backwards).toBe(1);
    expect(profile.points.map(({ elevation }) => elevation)).toEqual([300, 310, 330]);
  });

  it('keeps points that share a second, and does not call them a clock that ran backwards', () => {
    const profile = profileOf(
      track([point(0, 0, 300), point(0, 0.01, 700), point(10, 0.1, 310), point(10, 0.11, 320)]),
    );
    expect(profile.backwards).toBe(0);
    expect(profile.points.map(({ elevation }) => elevation)).toEqual([300, 700, 310, 320]);
  });

  it('holds a height to the ends and knows when there is none', () => {
    const held = profileOf(track([point(0, 0, null), point(1, 0.1, 500), point(2, 0.2, null)]));
    expect(held.points.map(({ elevation }) => elevation)).toEqual([500, 500, 500]);
    expect(profileOf(track([point(0, 0, null), point(1, 0.1, null)])).elevations).toBe('none');
  });
});

describe('fifty thousand points', () => {
  const many = Array.from({ length: 50_000 }, (_, i) => ({
    along: metre(i),
    elevation: metre(800 + 400 * Math.sin(i / 4000) + (i === 31_234 ? -900 : 0) + (i === 12_345 ? 700 : 0)),
    at: instant(START + i * 500),
  }));

  it('become at most 400 with the lowest, the highest, the first and the last among them', () => {
    const few = simplified(many, 400);
    expect(few.length).toBeLessThanOrEqual(400);
    const heights = (points: typeof few) => points.map(({ elevation }) => elevation!);
    expect(Math.min(...heights(few))).toBe(Math.min(...heights(many)));
    expect(Math.max(...heights(few))).toBe(Math.max(...heights(many)));
    expect([few[0], few.at(-1)]).toEqual([many[0], many.at(-1)]);
    for (const [i, { along }] of few.entries()) if (i > 0) expect(along).toBeGreaterThan(few[i - 1]!.along);
  });

  it('make a ride that ends a leg at the lowest of them', () => {
    const profile = {
      name: '',
      points: many,
      start: { latitude: 47, longitude: -93 },
      segments: 1,
      pointsInFile: many.length,
      backwards: 0,
      timed: true,
      elevations: 'all',
      spots: [],
    } as const;
    const ride = expectOk(rideOfTrack(profile, AS_RECORDED));
    const lowest = Math.min(...many.map(({ elevation }) => elevation));
    expect(ride.stops.map(({ elevation }) => elevation)).toContain(lowest);
    expect(ride.stops.length).toBeLessThanOrEqual(21);
  });
});

describe('short legs of a track', () => {
  it('are part of their neighbours, but for the lowest and the highest point', () => {
    const hilly = [
      point(0, 0, 500),
      point(2, 0.02, 560),
      point(3, 0.03, 500),
      point(30, 0.3, 800),
      point(31, 0.31, 740),
      point(33, 0.33, 1200),
      point(60, 0.6, 300),
      point(61, 0.61, 350),
      point(63, 0.63, 310),
    ];
    const ride = expectOk(rideOfTrack(profileOf(track(hilly)), AS_RECORDED));
    const heights = ride.stops.map(({ elevation }) => elevation);
    expect(heights).toContain(300);
    expect(heights).toContain(1200);
    expect(heights.length).toBeLessThanOrEqual(6);
    // All of the way is still ridden, with every height of it.
    expect(ride.points.map(({ elevation }) => elevation)).toEqual([
      500, 560, 500, 800, 740, 1200, 300, 350, 310,
    ]);
  });
});

describe('several tracks in a file', () => {
  const morning = track([point(0, 0, 300), point(60, 0.1, 800)]);
  const afternoon = track([point(180, 0.1, 800), point(240, 0.2, 300)]);
  const nextDay = track([point(24 * 60, 0, 300), point(25 * 60, 0.1, 900)]);

  it('of one day are joined in order of time, whatever their order in the file', () => {
    const [day, ...others] = joinedDays([afternoon, nextDay, morning], 'UTC');
    expect(others).toEqual([]);
    expect(day).toMatchObject({
      count: 2,
      track: { segments: [...morning.segments, ...afternoon.segments] },
    });
    const ride = expectOk(rideOfTrack(profileOf(day!.track), AS_RECORDED));
    expect(ride.stops.map(({ elevation }) => elevation)).toContain(800);
  });

  it('of other days, without times, or only planned stay by themselves', () => {
    expect(joinedDays([morning, nextDay], 'UTC')).toEqual([]);
    const untimed = {
      ...afternoon,
      segments: afternoon.segments.map((each) => each.map((p) => ({ ...p, at: null }))),
    };
    expect(joinedDays([morning, untimed, { ...afternoon, route: true }], 'UTC')).toEqual([]);
  });

  it('go by the day of the zone, and a zone that does not exist throws nothing', () => {
    const late = track([point(0, 0, 300), point(5, 0.1, 400)]);
    expect(joinedDays([late, afternoon], 'Mars/Base')).toHaveLength(1);
  });
});

describe('a ride along a track', () => {
  const upAndOver = profileOf(
    track([
      point(0, 0, 300),
      point(30, 0.1, 900),
      point(60, 0.2, 1450),
      point(100, 0.2001, 1450),
      point(140, 0.3, 700),
    ]),
  );

  it('has its legs from turn to turn and a stop where it stood still', () => {
    const ride = expectOk(rideOfTrack(upAndOver, AS_RECORDED));
    expect(legsOf(ride).map(({ from, to }) => [from.elevation, to.elevation])).toEqual([
      [300, 1450],
      [1450, 700],
    ]);
    expect(movingMs(ride) / HOUR_MS).toBeCloseTo((60 + 40) / 60, 9);
    expect(ride.distance).toBeCloseTo(0.3 * 111_195.08, 0);
  });

  it('keeps its pace on another day', () => {
    const saturday = instant(Date.UTC(2027, 1, 20, 7, 30));
    const ride = expectOk(rideOfTrack(upAndOver, { ...AS_RECORDED, start: saturday }));
    expect(ride.stops[0]!.arrive).toBe(saturday);
    expect(ride.stops.at(-1)!.arrive - saturday).toBe(140 * 60_000);
  });

  it('without times wants a start and a speed, and is ridden at it', () => {
    const bare = profileOf(track([point(null, 0, 300), point(null, 0.1, 900), point(null, 0.2, 400)]));
    expect(rideOfTrack(bare, AS_RECORDED)).toEqual({ ok: false, reason: { code: 'track-without-times' } });
    expect(rideOfTrack(bare, { ...AS_RECORDED, start: START })).toMatchObject({ ok: false });
    const ride = expectOk(rideOfTrack(bare, { start: START, speed: speedMs(10), heights: null }));
    // 22,239 m at 10 m/s.
    expect((ride.stops.at(-1)!.arrive - START) / 1000).toBeCloseTo(2223.9, 0);
    expect(ride.stops[1]!.elevation).toBe(900);
  });

  it('without heights wants three, and climbs straight between them', () => {
    const flat = profileOf(track([point(0, 0, null), point(30, 0.1, null), point(60, 0.2, null)]));
    expect(rideOfTrack(flat, AS_RECORDED)).toEqual({ ok: false, reason: { code: 'track-without-heights' } });
    const heights = { start: metre(300), middle: metre(1400), end: metre(500) };
    const ride = expectOk(rideOfTrack(flat, { ...AS_RECORDED, heights }));
    expect(ride.points.map(({ elevation }) => Math.round(elevation))).toEqual([300, 1400, 500]);
  });

  it('that goes nowhere is none', () => {
    const still = profileOf(track([point(0, 0, 300), point(30, 0, 300)]));
    expect(rideOfTrack(still, AS_RECORDED)).toEqual({ ok: false, reason: { code: 'track-without-way' } });
  });

  it('that lasts longer than a day and a half says so', () => {
    const long = profileOf(track([point(0, 0, 300), point(60 * 40, 1, 900)]));
    expect(rideOfTrack(long, AS_RECORDED)).toMatchObject({ ok: false, reason: { code: 'ride-too-long' } });
  });

  it('with wiggles all day still has few legs, and every height lies between the ends of its leg', () => {
    const wiggly = profileOf(
      track(
        Array.from({ length: 2000 }, (_, i) =>
          point(i / 5, i / 4000, 600 + 300 * Math.sin(i / 90) + 35 * Math.sin(i / 3)),
        ),
      ),
    );
    const ride = expectOk(rideOfTrack(wiggly, AS_RECORDED));
    expect(ride.stops.length).toBeLessThanOrEqual(21);
    for (const { from, to } of legsOf(ride)) {
      const within = ride.points.filter(({ at }) => at >= from.leave && at <= to.arrive);
      const low = Math.min(from.elevation, to.elevation);
      const high = Math.max(from.elevation, to.elevation);
      // The first and last leg may begin or end off a turn, by less than what counts as one.
      const slack = from === ride.stops[0] || to === ride.stops.at(-1) ? 480 : 0;
      for (const { elevation } of within) {
        expect(elevation).toBeGreaterThanOrEqual(low - slack - 1e-9);
        expect(elevation).toBeLessThanOrEqual(high + slack + 1e-9);
      }
    }
  });
});
