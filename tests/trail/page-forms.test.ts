import { describe, expect, it } from 'vitest';
import { readCard } from '@/components/trail/read-card';
import { readRide } from '@/components/trail/read-ride';
import { readSeasons } from '@/components/trail/read-seasons';
import { withMonth } from '@/components/trail/with-month';
import { draftInUnits } from '@/lib/fields/trail/draft-in-units';
import { firstDraft } from '@/lib/fields/trail/first-draft';
import type { RideDraft, TrailDraft } from '@/lib/fields/trail/trail-rows';
import { instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { profileFromText, profileToText } from '@/lib/trail/profile-text';
import { profileOf } from '@/lib/trail/track';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { kelvinToCelsius, kelvinToFahrenheit } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';

const DAY = { timezone: 'America/Chicago', date: '2027-01-16' };
const us = firstDraft({ units: US_UNITS, ...DAY });
const metric = firstDraft({ units: METRIC_UNITS, ...DAY });
const rideWith = (draft: TrailDraft, change: Partial<RideDraft>) =>
  readRide({ ...draft.ride, ...change }, draft.units);

describe.each([
  ['US', us],
  ['metric', metric],
])('the page as it opens in %s units', (_, draft) => {
  it('has nothing to complain about', () => {
    expect(readSeasons(draft).errors).toEqual({});
    expect(readSeasons(draft).conditions).toHaveLength(3);
    expect(readRide(draft.ride, draft.units).errors).toEqual({});
    expect(readCard(draft.card, draft.units).errors).toEqual({});
  });

  it('means the same after a change of units and back', () => {
    const other = draft.units.temperature === 'F' ? METRIC_UNITS : US_UNITS;
    const back = draftInUnits(draftInUnits(draft, other), draft.units);
    const temperatures = (of: TrailDraft) =>
      readSeasons(of).conditions.map(({ air }) => Number(air.temperature.toFixed(2)));
    expect(temperatures(back)).toEqual(temperatures(draft));
    const there = readRide(draftInUnits(draft, other).ride, other);
    const here = readRide(draft.ride, draft.units);
    for (const [i, stop] of here.ride!.stops.entries())
      expect(there.ride!.stops[i]!.elevation).toBeCloseTo(stop.elevation, 1);
    expect(there.fall! / here.fall!).toBeCloseTo(1, 2);
  });
});

describe('kinds of day', () => {
  it('leave an empty one out and explain a wrong one', () => {
    const [first, ...rest] = us.conditions;
    const draft = {
      ...us,
      conditions: [{ ...first!, temperature: '' }, { ...first!, temperature: '300' }, ...rest],
    };
    const { conditions, errors } = readSeasons(draft);
    expect(conditions).toHaveLength(2);
    expect(errors['conditions.1.temperature']).toContain('outside what air at a track can be');
  });

  it('take pressure and humidity of past winters where they were added, and the standard atmosphere elsewhere', () => {
    const [first] = us.conditions;
    const past = { ...first!, stationHpa: '905.5', humidity: '71' };
    const { conditions } = readSeasons({ ...us, conditions: [past, first!] });
    expect(conditions[0]!.air).toMatchObject({
      pressure: 90_550,
      pressureFrom: 'station',
      relativeHumidity: 0.71,
    });
    expect(conditions[1]!.air.pressureFrom).toBe('standard');
  });

  it('of past winters come beside the others, and leave the place and every other day where they were', () => {
    const spread = (p50: number) => ({ p10: p50 - 10, p50, p90: p50 + 10 });
    const month = {
      month: 1,
      hours: 900,
      temperatureC: spread(-12),
      pressureHpa: spread(962),
      relativeHumidity: spread(0.7),
    };
    for (const draft of [us, metric]) {
      const added = withMonth(draft, { month, percentile: 'p10' }, 6);
      expect(added.elevation).toBe(draft.elevation);
      expect(readSeasons(added).conditions.slice(0, 3)).toEqual(readSeasons(draft).conditions);
      expect(readSeasons(added).conditions[3]).toMatchObject({
        name: 'January, cold',
        air: { pressure: 96_200 },
      });
    }
  });

  it('lie above 3,000 m and below the sea as well', () => {
    for (const elevation of ['11500', '-1300'])
      expect(readSeasons({ ...us, elevation }).conditions).toHaveLength(3);
    expect(readSeasons({ ...us, elevation: '30000' }).errors.elevation).toBeDefined();
  });
});

describe('a typed ride', () => {
  it('rolls over midnight', () => {
    const [a, b] = us.ride.places;
    const places = [
      { ...a!, clock: '21:00' },
      { ...b!, clock: '0:30', stop: '' },
    ];
    const { ride } = rideWith(us, { places });
    expect(ride!.stops.map(({ arrive }) => isoUtc(arrive))).toEqual([
      '2027-01-17T03:00:00Z',
      '2027-01-17T06:30:00Z',
    ]);
  });

  it('says beside the field what is wrong', () => {
    const [a, b, ...rest] = us.ride.places;
    const errors = (change: Partial<RideDraft>) => rideWith(us, change).errors;
    expect(errors({ places: [a!, { ...b!, clock: 'noonish' }, ...rest] })['places.1.clock']).toContain(
      '10:30',
    );
    expect(
      errors({ places: [a!, { ...b!, elevation: 'high' }, ...rest] })['places.1.elevation'],
    ).toBeDefined();
    expect(errors({ places: [a!] }).places).toContain('two places');
    expect(errors({ places: [{ ...a!, stop: '600' }, b!, ...rest] })['places.1.clock']).toContain(
      'Pass is reached',
    );
    expect(errors({ date: '2027-02-30' }).date).toBeDefined();
    expect(errors({ timezone: 'Mars/Base' }).timezone).toContain('Mars/Base');
    expect(errors({ fall: '40' }).fall).toContain('More than air can do');
    expect(errors({ hours: us.ride.hours.slice(0, 1) }).hours).toContain('two temperatures');
    expect(errors({ fuelUse: '-3' }).fuelUse).toBeDefined();
  });

  it('takes fuel per hour or per way', () => {
    expect(rideWith(metric, { fuelUse: '9' }).consumption).toEqual({ kind: 'per-hour', litres: 9 });
    const far = rideWith(us, { fuel: 'per-distance', fuelUse: '10', distance: '50' });
    expect(far.consumption).toMatchObject({ kind: 'per-distance' });
    // 10 US gal of 231 cubic inches (NIST Handbook 44, appendix C) in 100 international miles of 1609.344 m.
    expect((far.consumption as { litresPerKilometre: number }).litresPerKilometre).toBeCloseTo(
      37.85411784 / 160.9344,
      9,
    );
    expect(far.ride!.distance).toBeCloseTo(80_467.2, 1);
    expect(rideWith(us, { fuelUse: '' }).consumption).toBeNull();
  });
});

describe('a ride along a kept track', () => {
  const points = [300, 900, 400].map((height, i) => ({
    latitude: 47 + i / 10,
    longitude: -93,
    elevation: metre(height),
    at: instant(Date.UTC(2026, 11, 20, 15 + i)),
  }));
  const profile = profileOf({ name: 'Old day', segments: [points], route: false });
  const track = profileToText(profile);

  it('comes back from the browser as it was put there', () => {
    const kept = profileFromText(track)!;
    expect(kept).toMatchObject({ name: 'Old day', timed: true, elevations: 'all' });
    expect(kept.points.map(({ elevation }) => elevation)).toEqual([300, 900, 400]);
    for (const text of [
      '',
      '{',
      '[]',
      '{"points":[[0]]}',
      '{"points":[[0,1,2],[1,"x",3]],"elevations":"all"}',
    ])
      expect(profileFromText(text)).toBeNull();
  });

  it('is ridden as recorded, or at the recorded pace on another day', () => {
    const asRecorded = rideWith(us, { way: 'track', track, startClock: '' });
    expect(isoUtc(asRecorded.ride!.stops[0]!.arrive)).toBe('2026-12-20T15:00:00Z');
    const saturday = rideWith(us, { way: 'track', track, startClock: '9:30' });
    expect(isoUtc(saturday.ride!.stops[0]!.arrive)).toBe('2027-01-16T15:30:00Z');
    expect(isoUtc(saturday.ride!.stops.at(-1)!.arrive)).toBe('2027-01-16T17:30:00Z');
  });

  it('waits for a file without a complaint', () => {
    const none = rideWith(us, { way: 'track', track: '' });
    expect(none).toMatchObject({ ride: null, errors: {} });
  });

  it('without heights says what is missing as a whole before it asks field by field', () => {
    const flat = profileToText({ ...profile, elevations: 'none', timed: false });
    const { errors, ride } = rideWith(us, { way: 'track', track: flat, startClock: '' });
    expect(ride).toBeNull();
    // Alone: nothing is red before anybody has begun to type heights.
    expect(Object.keys(errors)).toEqual(['track']);
    expect(errors.track).toContain('no heights: take those of the ground below, or type those of its start');
    const begun = rideWith(us, { way: 'track', track: flat, startClock: '', heightStart: '900' });
    expect(Object.keys(begun.errors)).toEqual(['track', 'heightMiddle', 'heightEnd']);
  });
});

describe('lines and columns of the card', () => {
  it('stand on whole steps of the person’s own units', () => {
    const { axes } = readCard(us.card, US_UNITS);
    expect(axes!.temperatures.map((t) => Math.round(kelvinToFahrenheit(t)))).toEqual([
      40, 30, 20, 10, 0, -10, -20, -30, -40,
    ]);
    const celsius = readCard(metric.card, METRIC_UNITS).axes!;
    expect(celsius.temperatures.map((t) => Math.round(kelvinToCelsius(t))).slice(0, 3)).toEqual([5, 0, -5]);
    expect(celsius.elevations.map(Math.round)).toEqual([0, 500, 1000, 1500, 2000, 2500, 3000]);
  });

  it('are no more than a pocket card holds', () => {
    expect(readCard({ ...us.card, step: '2' }, US_UNITS).errors.step).toContain('a card holds 14');
    expect(readCard({ ...us.card, step: '7', shows: 'main-screw' }, US_UNITS).errors.step).toContain(
      'a card holds 10',
    );
    expect(readCard({ ...us.card, rise: '100' }, US_UNITS).errors.rise).toContain('a card holds 7');
    expect(readCard({ ...us.card, step: '0' }, US_UNITS).errors.step).toBeDefined();
    expect(readCard({ ...us.card, coldest: '60' }, US_UNITS).errors.step).toContain('wrong way round');
    expect(readCard({ ...us.card, highest: '40000' }, US_UNITS).errors.highest).toBeDefined();
  });
});
