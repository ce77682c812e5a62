import { describe, expect, it } from 'vitest';
import { clockOf } from '@/lib/fields/clock-text';
import { deviceHours } from '@/lib/time/device-hours';
import { instant } from '@/lib/time/instant';
import { clockFace, localClock } from '@/lib/time/zone';
import { clockText, dateClockText, windowText } from '@/lib/words/times';

const CHICAGO_12 = { zone: 'America/Chicago', hours: '12' } as const;
const at = (iso: string) => instant(Date.parse(iso));
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('a clock as the person reads it', () => {
  it.each([
    // Noon is 12 pm and midnight 12 am: NIST, Times of Day FAQ (from memory).
    ['00:00', '12:00 am'],
    ['00:05', '12:05 am'],
    ['07:45', '7:45 am'],
    ['12:00', '12:00 pm'],
    ['19:45', '7:45 pm'],
    ['23:59', '11:59 pm'],
  ])('%s is %s on the 12-hour clock', (time, twelve) => {
    expect(plain(clockFace(time, '12'))).toBe(twelve);
    expect(clockFace(time, '24')).toBe(time);
  });

  it('is that of the 24-hour clock where nothing is said, as in files and answers', () => {
    expect(localClock(at('2027-01-17T04:05:00Z'), 'America/Chicago')).toBe('22:05');
    expect(plain(localClock(at('2027-01-17T04:05:00Z'), CHICAGO_12))).toBe('10:05 pm');
  });

  it('goes through days, windows and the hour shown twice', () => {
    const zone = CHICAGO_12;
    const night = at('2027-11-07T06:30:00Z');
    expect(plain(clockText(night, { zone }))).toBe('1:30 am before the clocks go back');
    expect(plain(windowText(at('2027-01-17T04:05:00Z'), at('2027-01-17T04:25:00Z'), { zone }))).toBe(
      '10:05 pm to 10:25 pm',
    );
    // So long that the times alone would be of either day; a night is not.
    const [day, next] = [at('2027-01-16T19:00:00Z'), at('2027-01-17T19:00:00Z')];
    const from = at('2027-01-17T01:00:00Z');
    expect(windowText(day, next, { zone: 'America/Chicago' })).toBe('Sat 13:00 to Sun 13:00');
    expect(plain(windowText(day, next, { zone, from }))).toBe('Sat 1:00 pm to Sun 1:00 pm');
    expect(windowText(day, from, { zone: 'America/Chicago', from })).toBe('13:00 to 19:00');
    expect(windowText(from, at('2027-01-17T08:30:00Z'), { zone: 'America/Chicago', from })).toBe(
      '19:00 to 02:30',
    );
    // Each day is named once, also where it would have been named anyway.
    expect(windowText(day, at('2027-01-18T19:00:00Z'), { zone: 'America/Chicago', from })).toBe(
      'Sat 13:00 to Mon 13:00',
    );
    expect(plain(dateClockText(at('2027-01-17T04:05:00Z'), zone))).toBe('2027-01-16 10:05 pm');
  });

  it('is read back from a field, minute by minute of a day', () => {
    for (let minute = 0; minute < 1440; minute += 1) {
      const two = (n: number) => String(n).padStart(2, '0');
      const time = `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
      expect(clockOf(clockFace(time, '12'))).toBe(time);
      expect(clockOf(time)).toBe(time);
    }
  });

  it('follows the device’s language', () => {
    // Usual hour cycles: Unicode CLDR, supplemental time data (US: h; GB, DE, NO: H; CA in English: h).
    expect(['en-US', 'en-CA', 'en-GB', 'de-DE', 'nb-NO', 'fi-FI'].map(deviceHours)).toEqual([
      '12',
      '12',
      '24',
      '24',
      '24',
      '24',
    ]);
  });

  it('is 24 hours where the device names no language', () => {
    // "C" is what a browser passes on from a system without a locale; neither is a tag of BCP 47.
    expect(['C', '', 'not a tag'].map(deviceHours)).toEqual(['24', '24', '24']);
  });
});
