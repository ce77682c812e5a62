import { afterEach, expect, it, vi } from 'vitest';
import { instant } from '@/lib/time/instant';

/** The device's own language, where no other is asked for. */
class ArabicFormat extends Intl.DateTimeFormat {
  constructor(locales: Intl.LocalesArgument = 'ar-EG', options?: Intl.DateTimeFormatOptions) {
    super(locales, options);
  }
}

afterEach(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

it('clocks and dates are written in the same digits on a device set to Arabic ones', async () => {
  vi.stubGlobal('Intl', { DateTimeFormat: ArabicFormat });
  vi.resetModules();
  const { isoLocal, localClock, localDate } = await import('@/lib/time/zone');
  const { addDays } = await import('@/lib/time/local');
  const at = instant(Date.parse('2027-01-17T04:05:00Z'));
  // So that this test would see the device's digits.
  expect(new Intl.DateTimeFormat(undefined, { timeZone: 'UTC', year: 'numeric' }).format(at)).toContain(
    '٢٠٢٧',
  );
  expect(localClock(at, 'America/Chicago')).toBe('22:05');
  expect(localDate(at, 'America/Chicago')).toBe('2027-01-16');
  expect(isoLocal(at, 'America/Chicago')).toBe('2027-01-16T22:05:00-06:00');
  expect(addDays('2027-01-31', 1)).toBe('2027-02-01');
});
