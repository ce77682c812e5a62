import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { isoUtc } from '@/lib/time/zone';
import { ridingTimes } from '@/lib/trail/riding-times';

const times = (date: string, clocks: readonly string[], zone = 'America/Chicago') =>
  expectOk(ridingTimes(date, clocks, zone)).map(isoUtc);

describe('clock times of a ride', () => {
  it('roll over midnight', () => {
    expect(times('2027-01-16', ['22:30', '00:15', '03:00'])).toEqual([
      '2027-01-17T04:30:00Z',
      '2027-01-17T06:15:00Z',
      '2027-01-17T09:00:00Z',
    ]);
  });

  it('keep their order through the hour that the clocks show twice', () => {
    // IANA rules: Chicago goes from UTC-5 to UTC-6 on 2026-11-01 at 02:00.
    expect(times('2026-11-01', ['00:30', '01:30', '01:10', '02:30'])).toEqual([
      '2026-11-01T05:30:00Z',
      '2026-11-01T06:30:00Z',
      '2026-11-01T07:10:00Z',
      '2026-11-01T08:30:00Z',
    ]);
  });

  it('name the one that the clocks jump over', () => {
    // IANA rules: Chicago goes from 02:00 to 03:00 on 2027-03-14.
    const read = ridingTimes('2027-03-14', ['01:00', '02:30'], 'America/Chicago');
    expect(read).toMatchObject({ ok: false, reason: { index: 1, problem: { code: 'missing-hour' } } });
  });

  it('say that a date is none', () => {
    expect(ridingTimes('2027-02-30', ['08:00'], 'America/Chicago')).toMatchObject({
      ok: false,
      reason: { index: 0, problem: { code: 'not-a-date' } },
    });
  });
});
