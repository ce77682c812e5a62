import { describe, expect, it } from 'vitest';
import { placeOffsetToJson } from '@/lib/contract/place-offset';
import { withoutOffsetElsewhere } from '@/lib/night/moved-place';
import { nightFrom } from '@/lib/night/night';
import { placeTaught } from '@/lib/night/place-taught';
import { expectOk } from '@/lib/result/result';
import { keptNight } from '@/lib/share/kept-night';
import { packNight, unpackNight } from '@/lib/share/night-link';
import { nightRequests, sharedSeries } from '@/lib/share/night-requests';
import { sharedNightOf } from '@/lib/share/shared-night-of';
import { type EventRecord, eventRecordSchema, type Stored } from '@/lib/store/records';
import { isoUtc } from '@/lib/time/zone';
import { METRIC_UNITS } from '@/lib/units/choice';
import { placeOffsetSentence } from '@/lib/words/place-offset';
import { planNight } from '@/tests/support/plan-night';
import { LAKE, type LakeEvening, lakeEvening } from '../support/lake-evenings';
import { chicago, demoRecords } from './night-case';

const NOW = chicago('2027-01-16', '18:15');
const evening = (id: string, given: LakeEvening) => lakeEvening(id, given, NOW);

const tonight = evening('tonight', { daysAgo: 0, off: 0 });
const taughtBy = (...events: readonly Stored<EventRecord>[]) =>
  placeTaught(tonight, { events: [tonight, ...events], forecasts: [] });

const nights = [7, 14, 21, 28, 35].map((daysAgo) => evening(`n${daysAgo}`, { daysAgo, off: -2 }));

describe('What past nights at a place teach', () => {
  it('is how they ran against their own hours, by night', () => {
    expect(taughtBy(...nights)).toMatchObject({ nights: 5, ran: expect.closeTo(-2, 6), kind: 'official' });
    expect(taughtBy()).toBeNull();
  });

  it.each([
    ['another place, a kilometre away', { daysAgo: 7, off: -2, place: { ...LAKE, latitude: 46.8 } }],
    ['the demo', { daysAgo: 7, off: -2, demo: true }],
    ['a night still to come', { daysAgo: -7, off: -2 }],
  ] as const)('is not taught by %s', (_what, given) => {
    expect(taughtBy(evening('other', given))).toBeNull();
  });

  it('is taught by the same place told 200 m beside, and once by a night that was kept twice', () => {
    const beside = evening('beside', { daysAgo: 7, off: -2, place: { ...LAKE, latitude: 46.7918 } });
    expect(taughtBy(beside)).toMatchObject({ nights: 1 });
    const [one] = nights;
    expect(taughtBy(one!, { ...one!, id: 'kept' })).toEqual(taughtBy(one!));
  });

  it('says nothing to the demo, and nothing where the night has no place', () => {
    const demo = evening('tonight', { daysAgo: 0, off: 0, demo: true });
    expect(placeTaught(demo, { events: [demo, ...nights], forecasts: [] })).toBeNull();
    const { place: _, ...nowhere } = tonight.value.event;
    const lost = { ...tonight, value: { ...tonight.value, event: nowhere } };
    expect(placeTaught(lost, { events: [lost, ...nights], forecasts: [] })).toBeNull();
  });
});

const records = { ...demoRecords(NOW), event: { ...tonight, value: { ...tonight.value, readings: [] } } };
const placeOffset = taughtBy(...nights)!;
const withIt = expectOk(nightFrom({ ...records, placeOffset }));
const without = expectOk(nightFrom(records));

describe('A night at a place that is known', () => {
  it('is planned colder, and as before with one switch', () => {
    const [plan, plain] = [withIt, without].map((night) => expectOk(planNight(night, NOW)));
    expect(plan!.runs[0]!.air.temperature).toBeLessThan(plain!.runs[0]!.air.temperature);
    const value = { ...records.event.value, withoutPlaceOffset: true };
    const off = expectOk(nightFrom({ ...records, event: { ...records.event, value }, placeOffset }));
    expect(expectOk(planNight(off, NOW))).toEqual(plain);
  });

  it('says how the place ran, on how many nights, and what is counted on', () => {
    const plan = expectOk(planNight(withIt, NOW));
    const voice = { zone: 'America/Chicago', units: METRIC_UNITS };
    const words = placeOffsetSentence(placeOffset, { plan, used: true }, voice).replaceAll('\u00a0', ' ');
    expect(words).toMatch(
      /^This place ran 2\.0 °C under the hours on 5 nights\. The plan counts on 0\.\d °C colder at /,
    );
    expect(words).toMatch(/in 4 of 5 cases between \d\.\d °C colder and \d\.\d °C (colder|warmer)\)\.$/);
    expect(placeOffsetSentence(placeOffset, { plan, used: false }, voice)).toMatch(/does not count on it\.$/);
  });

  it('travels in a link, and is planned and kept by whoever opens it', () => {
    const plan = expectOk(planNight(withIt, NOW));
    const shared = sharedNightOf({ night: withIt, plan, sharedAt: NOW, exactPlace: true });
    const opened = expectOk(unpackNight(packNight(shared)));
    const series = expectOk(sharedSeries(opened));
    const [request] = expectOk(nightRequests(opened, { series, now: NOW }));
    expect(request!.placeOffset).toMatchObject({ nights: 5, kind: 'official' });
    let ids = 0;
    const { event } = keptNight(opened, () => `id${ids++}`);
    const kept = eventRecordSchema.parse(event.value);
    const there = { id: event.id, revision: 1, updatedAt: isoUtc(NOW), value: kept };
    expect(placeTaught(there, { events: [there], forecasts: [] })).toMatchObject({ nights: 5 });
  });

  it('does not keep what it came with when its place is moved', () => {
    const given = { ...tonight.value, placeOffset: placeOffsetToJson(placeOffset), withoutPlaceOffset: true };
    expect(withoutOffsetElsewhere(given, { ...LAKE, latitude: 46.791 })).toBe(given);
    expect(withoutOffsetElsewhere(given, { ...LAKE, latitude: 47 })).not.toHaveProperty('placeOffset');
    expect(withoutOffsetElsewhere(given, undefined)).not.toHaveProperty('withoutPlaceOffset');
  });
});
