import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { clockChange, fromLocal } from '@/lib/time/local';
import {
  hourTicks,
  isoLocal,
  isoUtc,
  localClock,
  localDate,
  localWeekday,
  offsetMinutes,
  readInstant,
  zoneExists,
} from '@/lib/time/zone';

const at = (iso: string) => expectOk(readInstant(iso));

describe('reading an instant', () => {
  it('reads the same moment from UTC, from an offset and from a basic offset', () => {
    const moment = Date.UTC(2027, 0, 17, 4, 5);
    for (const text of [
      '2027-01-17T04:05:00Z',
      '2027-01-16T22:05-06:00',
      '2027-01-16T22:05:00-0600',
      '2027-01-17t04:05z',
    ])
      expect(at(text)).toBe(moment);
  });

  it('does not take the zone of this machine for a time without an offset', () => {
    for (const text of ['2027-01-16T22:05', '2027-01-16 22:05:00', '2027-01-16'])
      expect(readInstant(text)).toEqual({ ok: false, reason: { code: 'no-offset', text } });
  });

  it('refuses what is no time', () => {
    for (const text of [
      '',
      'tonight',
      '2027-02-30T10:00Z',
      '2027-01-16T25:00Z',
      '2027-13-01T00:00Z',
      '1e309',
    ])
      expect(readInstant(text)).toEqual({ ok: false, reason: { code: 'not-a-time', text } });
  });

  it('gives back what it wrote, to the millisecond', () => {
    for (const ms of [0, Date.UTC(2027, 0, 17, 4, 5), 1_800_000_000_123, -1]) {
      expect(at(isoUtc(instant(ms)))).toBe(ms);
      expect(at(isoLocal(instant(ms), 'America/Chicago'))).toBe(ms);
    }
  });
});

describe('the clock at the track', () => {
  const evening = at('2027-01-17T04:05:00Z');

  it('is the track zone, not the zone of the phone', () => {
    expect(localClock(evening, 'America/Chicago')).toBe('22:05');
    expect(localDate(evening, 'America/Chicago')).toBe('2027-01-16');
    expect(localWeekday(evening, 'America/Chicago')).toBe(6);
    expect(isoLocal(evening, 'America/Chicago')).toBe('2027-01-16T22:05:00-06:00');
    expect(localClock(evening, 'Europe/Helsinki')).toBe('06:05');
    expect(localDate(evening, 'Europe/Helsinki')).toBe('2027-01-17');
    expect(offsetMinutes(evening, 'Asia/Kolkata')).toBe(330);
  });

  it('writes midnight as 00:00 of the new day', () => {
    const midnight = at('2027-01-17T00:00:00-06:00');
    expect(`${localDate(midnight, 'America/Chicago')} ${localClock(midnight, 'America/Chicago')}`).toBe(
      '2027-01-17 00:00',
    );
  });

  it('knows which zones exist', () => {
    expect(['America/Chicago', 'Europe/Oslo', 'UTC'].every(zoneExists)).toBe(true);
    expect(['America/Nowhere', '', 'Central Time'].some(zoneExists)).toBe(false);
  });

  it.each([
    'America/Chicag',
    'America/',
    '',
    ' ',
    'Mars/Base',
    '__proto__',
    'local',
    'system',
    'UTC+3',
    'x'.repeat(9999),
  ])('is told in UTC, and says so, where %s is no zone', (zone) => {
    expect(localClock(evening, zone)).toBe('04:05 UTC');
    expect(localDate(evening, zone)).toBe('2027-01-17');
    expect(localWeekday(evening, zone)).toBe(7);
    expect(isoLocal(evening, zone)).toBe('2027-01-17T04:05:00Z');
    expect(offsetMinutes(evening, zone)).toBe(0);
    expect(hourTicks({ from: evening, to: at('2027-01-17T06:00:00Z') }, zone)).toHaveLength(2);
    expect(clockChange(evening, at('2027-12-31T00:00:00Z'), zone)).toBeNull();
    expect(fromLocal('2027-01-16', '22:05', zone)).toEqual({
      ok: false,
      reason: { code: 'unknown-zone', zone },
    });
  });
});

describe('full hours of a night', () => {
  const clocks = (from: string, to: string, zone: string, every?: number) =>
    hourTicks({ from: at(from), to: at(to) }, zone, every).map((tick) => localClock(tick, zone));

  it('start at the first full local hour and include both ends', () => {
    expect(clocks('2027-01-16T18:20-06:00', '2027-01-16T21:00-06:00', 'America/Chicago')).toEqual([
      '19:00',
      '20:00',
      '21:00',
    ]);
    expect(clocks('2027-01-16T19:00-06:00', '2027-01-16T19:59-06:00', 'America/Chicago')).toEqual(['19:00']);
  });

  it('are full where the zone stands half an hour off UTC', () => {
    expect(clocks('2027-01-16T18:10+05:30', '2027-01-16T20:10+05:30', 'Asia/Kolkata')).toEqual([
      '19:00',
      '20:00',
    ]);
  });

  it('can be every third', () => {
    expect(clocks('2027-01-16T18:00-06:00', '2027-01-17T06:00-06:00', 'America/Chicago', 3)).toEqual([
      '18:00',
      '21:00',
      '00:00',
      '03:00',
      '06:00',
    ]);
  });

  // Dates of the changes: US Energy Policy Act of 2005, second Sunday of March and first of November, 2:00.
  it('are 23 from noon to noon when clocks go forward', () => {
    const ticks = hourTicks(
      { from: at('2027-03-13T12:00-06:00'), to: at('2027-03-14T12:00-05:00') },
      'America/Chicago',
    );
    expect(ticks).toHaveLength(24);
    expect(ticks.map((tick) => localClock(tick, 'America/Chicago'))).not.toContain('02:00');
    expect(ticks.every((tick, i) => i === 0 || tick - (ticks[i - 1] ?? 0) === HOUR_MS)).toBe(true);
  });

  it('are 25 from noon to noon when clocks go back, one clock time twice', () => {
    const ticks = hourTicks(
      { from: at('2026-10-31T12:00-05:00'), to: at('2026-11-01T12:00-06:00') },
      'America/Chicago',
    );
    expect(ticks).toHaveLength(26);
    expect(ticks.filter((tick) => localClock(tick, 'America/Chicago') === '01:00')).toHaveLength(2);
  });
});
