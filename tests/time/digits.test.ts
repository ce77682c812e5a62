import { Settings } from 'luxon';
import { afterEach, expect, it } from 'vitest';
import { instant } from '@/lib/time/instant';
import { addDays } from '@/lib/time/local';
import { isoLocal, localClock, localDate } from '@/lib/time/zone';

const before = Settings.defaultLocale;
afterEach(() => {
  Settings.defaultLocale = before;
});

it('clocks and dates are written in the same digits on a device set to Arabic ones', () => {
  Settings.defaultLocale = 'ar-EG';
  const at = instant(Date.parse('2027-01-17T04:05:00Z'));
  expect(localClock(at, 'America/Chicago')).toBe('22:05');
  expect(localDate(at, 'America/Chicago')).toBe('2027-01-16');
  expect(isoLocal(at, 'America/Chicago')).toBe('2027-01-16T22:05:00-06:00');
  expect(addDays('2027-01-31', 1)).toBe('2027-02-01');
});
