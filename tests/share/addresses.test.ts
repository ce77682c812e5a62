import { describe, expect, test } from 'vitest';
import { calendarAddress, linkAddress, payloadOf, webcalAddress } from '@/lib/share/addresses';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';

const ORIGIN = 'https://example.org:8443';

describe('The addresses of a night', () => {
  test('keep the night behind the #, which goes to no server (RFC 9110, section 7.1)', () => {
    const link = new URL(linkAddress(ORIGIN, '1abc'));
    expect([link.pathname, link.search, link.hash]).toEqual(['/open', '', '#1abc']);
  });

  test('make a phone offer to subscribe', () => {
    expect(webcalAddress(calendarAddress(ORIGIN, '1abc', US_UNITS))).toBe(
      'webcal://example.org:8443/api/plan.ics?d=1abc&units=us',
    );
    expect(calendarAddress(ORIGIN, '1abc', METRIC_UNITS)).not.toContain('units');
  });

  test('are understood again when pasted, with line breaks of a mail and from any of them', () => {
    expect(payloadOf(` ${ORIGIN}/open#1ab\n c-_ `)).toBe('1abc-_');
    expect(payloadOf(calendarAddress(ORIGIN, '1abc-_', US_UNITS))).toBe('1abc-_');
    expect(payloadOf('1abc-_')).toBe('1abc-_');
  });
});
