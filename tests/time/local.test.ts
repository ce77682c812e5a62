import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { addDays, clockChange, fromLocal } from '@/lib/time/local';
import { isoLocal, isoUtc, readInstant } from '@/lib/time/zone';

const at = (iso: string) => expectOk(readInstant(iso));
const utc = (date: string, clock: string, zone: string) => isoUtc(expectOk(fromLocal(date, clock, zone)).at);

describe('a clock time typed at the track', () => {
  it('becomes one moment', () => {
    expect(utc('2027-01-16', '22:05', 'America/Chicago')).toBe('2027-01-17T04:05:00Z');
    expect(utc('2027-07-16', '22:05', 'America/Chicago')).toBe('2027-07-17T03:05:00Z');
    expect(utc('2027-01-16', ' 9:05:30 ', 'Europe/Oslo')).toBe('2027-01-16T08:05:30Z');
  });

  it('takes 24:00 for midnight at the end of the date', () => {
    expect(utc('2027-01-16', '24:00', 'America/Chicago')).toBe(utc('2027-01-17', '00:00', 'America/Chicago'));
  });

  it('is refused when it is none', () => {
    for (const clock of ['24:01', '12:60', '7', '', 'noon', '-1:00', '10:00:60'])
      expect(fromLocal('2027-01-16', clock, 'Europe/Oslo')).toEqual({
        ok: false,
        reason: { code: 'not-a-clock', text: clock },
      });
    for (const date of ['2027-02-29', '16.1.2027', '', '2027-1-6'])
      expect(fromLocal(date, '10:00', 'Europe/Oslo')).toEqual({
        ok: false,
        reason: { code: 'not-a-date', text: date },
      });
    expect(fromLocal('2027-01-16', '10:00', 'Moon/Base')).toEqual({
      ok: false,
      reason: { code: 'unknown-zone', zone: 'Moon/Base' },
    });
  });
});

describe('the night the clocks change', () => {
  // European Union: Directive 2000/84/EC, last Sunday of March and October, 01:00 UTC.
  it('has no 02:30 in spring, and says between which times the clocks jumped', () => {
    for (const [date, zone, jump] of [
      ['2027-03-28', 'Europe/Berlin', '2027-03-28T01:00:00Z'],
      ['2027-03-14', 'America/Chicago', '2027-03-14T08:00:00Z'],
    ] as const)
      expect(fromLocal(date, '02:30', zone)).toEqual({
        ok: false,
        reason: { code: 'missing-hour', change: { at: at(jump), minutes: 60, from: '02:00', to: '03:00' } },
      });
  });

  it('is whole again at 03:00, and still whole at 01:59', () => {
    expect(utc('2027-03-28', '03:00', 'Europe/Berlin')).toBe('2027-03-28T01:00:00Z');
    expect(utc('2027-03-28', '01:59', 'Europe/Berlin')).toBe('2027-03-28T00:59:00Z');
  });

  it('shows 02:30 twice in autumn: the earlier is taken, the later is offered', () => {
    const { at: earlier, doubled } = expectOk(fromLocal('2026-10-25', '02:30', 'Europe/Berlin'));
    expect(isoLocal(earlier, 'Europe/Berlin')).toBe('2026-10-25T02:30:00+02:00');
    expect(doubled && isoLocal(doubled.later, 'Europe/Berlin')).toBe('2026-10-25T02:30:00+01:00');
    expect(doubled?.change).toEqual({
      at: at('2026-10-25T01:00:00Z'),
      minutes: -60,
      from: '03:00',
      to: '02:00',
    });
  });

  it('shows no time twice just outside the doubled hour', () => {
    for (const clock of ['01:59', '03:00'])
      expect(expectOk(fromLocal('2026-10-25', clock, 'Europe/Berlin')).doubled).toBeNull();
    expect(expectOk(fromLocal('2026-10-25', '02:00', 'Europe/Berlin')).doubled).not.toBeNull();
  });

  it('may shift by half an hour only', () => {
    // Lord Howe Island, IANA tz database file "australasia": 30 minutes forward at 2:00 on the first Sunday of October.
    expect(fromLocal('2026-10-04', '02:10', 'Australia/Lord_Howe')).toMatchObject({
      ok: false,
      reason: { code: 'missing-hour', change: { minutes: 30, from: '02:00', to: '02:30' } },
    });
  });

  it('may skip a whole date', () => {
    // Samoa had no 30 December 2011, IANA tz database file "australasia".
    expect(fromLocal('2011-12-30', '12:00', 'Pacific/Apia')).toMatchObject({
      ok: false,
      reason: { code: 'missing-hour', change: { minutes: 1440 } },
    });
  });

  it('is found by looking through a span', () => {
    const chicago = clockChange(at('2026-10-20T00:00Z'), at('2026-11-10T00:00Z'), 'America/Chicago');
    expect(chicago).toEqual({ at: at('2026-11-01T07:00:00Z'), minutes: -60, from: '02:00', to: '01:00' });
    expect(clockChange(at('2027-01-01T00:00Z'), at('2027-02-01T00:00Z'), 'America/Chicago')).toBeNull();
    // Saskatchewan keeps one time all year.
    expect(clockChange(at('2026-01-01T00:00Z'), at('2027-01-01T00:00Z'), 'America/Regina')).toBeNull();
  });
});

describe('days of the calendar', () => {
  it('cross months, years and leap days', () => {
    expect(addDays('2027-01-31', 1)).toBe('2027-02-01');
    expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
    expect(addDays('2027-01-01', -1)).toBe('2026-12-31');
    expect(addDays('2027-03-28', 1)).toBe('2027-03-29');
  });

  it('are null for what is no date', () => {
    expect(addDays('2027-02-30', 1)).toBeNull();
    expect(addDays('yesterday', 1)).toBeNull();
  });
});
