import { describe, expect, it } from 'vitest';
import { minutesBetween, spanFrom } from '@/lib/time/age';
import { addMinutes, instant } from '@/lib/time/instant';

const now = instant(Date.UTC(2027, 0, 17, 1, 0));

describe('how long ago, and how long until', () => {
  it('counts whole minutes toward now', () => {
    expect(minutesBetween(now, addMinutes(now, 14.9))).toBe(14);
    expect(minutesBetween(now, addMinutes(now, -14.9))).toBe(-14);
  });

  it('comes in days, hours and minutes', () => {
    expect(spanFrom(now, addMinutes(now, -25))).toEqual({
      direction: 'past',
      days: 0,
      hours: 0,
      minutes: 25,
    });
    expect(spanFrom(now, addMinutes(now, 95))).toEqual({
      direction: 'ahead',
      days: 0,
      hours: 1,
      minutes: 35,
    });
    expect(spanFrom(now, addMinutes(now, -(2 * 1440 + 3 * 60 + 4)))).toEqual({
      direction: 'past',
      days: 2,
      hours: 3,
      minutes: 4,
    });
  });

  it('is now within a minute on either side', () => {
    expect(spanFrom(now, addMinutes(now, 0.9)).direction).toBe('now');
    expect(spanFrom(now, addMinutes(now, -0.9)).direction).toBe('now');
  });
});
