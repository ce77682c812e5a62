import { describe, expect, it } from 'vitest';
import { crossingTime } from '@/lib/words/crossing-time';
import { crossing, ZONE } from './plan-of';

const said = (at: string, earliest: string, latest: string | null) => {
  const range = { earliest: crossing(earliest).at, latest: latest === null ? null : crossing(latest).at };
  return crossingTime(crossing(at, range), { zone: ZONE });
};

describe('The time of a crossing', () => {
  it('is said to five minutes, its range outwards', () => {
    expect(said('2027-01-16T22:38:10-06:00', '2027-01-16T22:06:00-06:00', '2027-01-16T23:21:00-06:00')).toBe(
      'about 22:40 (22:05 to 23:25)',
    );
  });

  it('is said by its range first where that is longer than three hours', () => {
    expect(said('2027-01-16T23:26:00-06:00', '2027-01-16T20:50:00-06:00', '2027-01-17T02:05:00-06:00')).toBe(
      'some time from 20:45 to 02:15, as likely before 23:30 as after it',
    );
  });

  it('is said to a quarter of an hour where some forecasts do not have it', () => {
    expect(said('2027-01-16T23:26:00-06:00', '2027-01-16T20:50:00-06:00', null)).toBe(
      'about 23:30 (20:45 at the earliest, in some forecasts not at all)',
    );
  });
});
