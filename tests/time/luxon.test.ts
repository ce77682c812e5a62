import { DateTime, IANAZone } from 'luxon';
import { expect, it } from 'vitest';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { fromLocal } from '@/lib/time/local';
import {
  isoLocal,
  localClock,
  localDate,
  localWeekday,
  offsetMinutes,
  readInstant,
  zoneExists,
} from '@/lib/time/zone';

// Against luxon 3, which works zones out in another way: from the clock a zone shows, not from the name of its offset.

const DAY_MS = 24 * HOUR_MS;
const ODD = [
  // Half an hour of summer time; a quarter hour off; a day lost in 2011; two hours of summer time; a month of Ramadan.
  'Australia/Lord_Howe',
  'Asia/Kathmandu',
  'Pacific/Chatham',
  'Pacific/Apia',
  'Antarctica/Troll',
  'Africa/Casablanca',
  'America/St_Johns',
  'America/Chicago',
  'Europe/Berlin',
  'Europe/Dublin',
  'Pacific/Kiritimati',
  'America/Regina',
  // Seconds off UTC until 1972.
  'Africa/Monrovia',
  // Fixed offsets, and UTC by its names.
  'Etc/GMT+5',
  'Etc/GMT-14',
  'UTC',
  'GMT',
  'Etc/UTC',
];

const luxonAt = (at: number, zone: string) => DateTime.fromMillis(at, { zone, locale: 'en-US' });

/** Between two looks for a change: shorter than any stretch between changes, the month of Ramadan among them. */
const STEP_MS = 20 * DAY_MS;

/** The first milliseconds after the changes of a zone's clocks. */
function changes(zone: string, from: number, to: number): readonly number[] {
  const rules = IANAZone.create(zone);
  const found: number[] = [];
  for (let start = from; start < to; start += STEP_MS) {
    let [before, after] = [start, start + STEP_MS];
    const offset = rules.offset(before);
    if (rules.offset(after) === offset) continue;
    while (after - before > 1) {
      const middle = Math.floor((before + after) / 2);
      if (rules.offset(middle) === offset) before = middle;
      else after = middle;
    }
    found.push(after);
  }
  return found;
}

function expectLikeLuxon(at: number, zone: string): void {
  const [ours, theirs] = [instant(at), luxonAt(at, zone)];
  expect([
    zone,
    localClock(ours, zone),
    localDate(ours, zone),
    localWeekday(ours, zone),
    offsetMinutes(ours, zone),
    isoLocal(ours, zone),
  ]).toEqual([
    zone,
    theirs.toFormat('HH:mm'),
    theirs.toISODate(),
    theirs.weekday,
    theirs.offset,
    theirs.toISO({ suppressMilliseconds: true }),
  ]);
}

it.each(ODD)('the clock of %s is luxon’s before and after every change', (zone) => {
  const edges = changes(zone, 0, Date.UTC(2037, 0)).flatMap((at) => [
    at - HOUR_MS,
    at - 1,
    at,
    at + 1,
    at + HOUR_MS,
  ]);
  for (const at of [0, Date.UTC(2027, 0, 17, 4, 5), Date.UTC(2026, 6, 1), ...edges])
    expectLikeLuxon(at, zone);
});

it('the clock of every zone of this machine is luxon’s, and luxon knows the same zones', () => {
  for (const zone of Intl.supportedValuesOf('timeZone')) {
    expect(zoneExists(zone)).toBe(true);
    for (let day = 0; day < 400; day += 91)
      expectLikeLuxon(Date.UTC(2026, 10, 30, 0, 7) + day * DAY_MS, zone);
  }
  for (const zone of ['America/Nowhere', 'utc', 'EST5EDT', 'europe/berlin', 'UTC+3', '+05:30', 'GMT0', 'Z'])
    expect([zone, zoneExists(zone)]).toEqual([zone, IANAZone.isValidZone(zone)]);
});

it.each(ODD)('a clock time typed in %s is the moment luxon gives, or the two, or none', (zone) => {
  // With 2011, when Samoa had no 30 December.
  const found = [
    ...changes(zone, Date.UTC(2011, 0), Date.UTC(2012, 1)),
    ...changes(zone, Date.UTC(2026, 0), Date.UTC(2028, 0)),
  ];
  for (const change of found) {
    for (let minutes = -25 * 60; minutes <= 25 * 60; minutes += Math.abs(minutes) <= 150 ? 10 : 60) {
      const wanted = luxonAt(change, 'utc').plus({ minutes });
      const shown = wanted.setZone(zone, { keepLocalTime: true });
      const exists = shown.toFormat('yyyy-MM-dd HH:mm') === wanted.toFormat('yyyy-MM-dd HH:mm');
      const moments = shown.getPossibleOffsets().map((time) => time.toMillis());
      const read = fromLocal(wanted.toISODate() ?? '', wanted.toFormat('HH:mm'), zone);
      // Seconds of a change of old are none of a typed clock.
      const seconds = wanted.second * 1000;
      expect([
        shown.toISO(),
        read.ok ? [read.value.at, read.value.doubled?.later ?? read.value.at] : read.reason.code,
      ]).toEqual([
        shown.toISO(),
        exists ? [Math.min(...moments) - seconds, Math.max(...moments) - seconds] : 'missing-hour',
      ]);
    }
  }
});

it.each([
  '2027-01-16T22:05:00-06:00',
  '2027-01-16T22:05:07,5-0600',
  '2027-01-16T22:05:07.123456+05',
  '2027-01-16t24:00z',
  '2027-01-16T24:00:01Z',
  '2027-01-16T23:60Z',
  '2027-01-16T23:59:60Z',
  '2027-02-29T00:00Z',
  '2028-02-29T00:00-00:30',
  '2027-13-01T00:00Z',
  '2027-00-10T00:00Z',
  '0001-01-01T00:00Z',
  '9999-12-31T23:59:59.999+14:00',
])('%s is read as luxon reads it', (text) => {
  const time = DateTime.fromISO(text.toUpperCase(), { setZone: true });
  const read = readInstant(text);
  expect(read.ok ? read.value : read.reason.code).toBe(time.isValid ? time.toMillis() : 'not-a-time');
});
