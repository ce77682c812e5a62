import { describe, expect, it } from 'vitest';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { kelvin, kelvinDifference, pascal, ratio } from '@/lib/units/quantity';
import { fillShortGaps, type Row } from '@/lib/weather/gaps';

/** A night as a row of signs: a digit is an hour that many kelvin above 260, a dot an hour without a value. */
function night(picture: string): readonly Row[] {
  return [...picture].map((sign, i) => ({
    at: instant(i * HOUR_MS),
    hour:
      sign === '.'
        ? null
        : {
            at: instant(i * HOUR_MS),
            temperature: kelvin(260 + Number(sign)),
            relativeHumidity: ratio(Number(sign) / 10),
            pressure: pascal(98_000 + 100 * Number(sign)),
            pressureFrom: 'station',
            spread: kelvinDifference(1),
            origin: 'forecast',
          },
  }));
}

/** The same picture of what comes out: filled hours in brackets, missing ones as dots. */
function picture(rows: readonly Row[]): string {
  const { hours, missing } = fillShortGaps(rows);
  return rows
    .map(({ at }) => {
      const hour = hours.find((candidate) => candidate.at === at);
      if (hour === undefined) return missing.includes(at) ? '.' : '?';
      const kelvins = Number((hour.temperature - 260).toFixed(6));
      return hour.origin === 'filled' ? `(${kelvins})` : String(kelvins);
    })
    .join('');
}

describe('an hour without a value', () => {
  it.each([
    ['5.3', '5(4)3'],
    ['6..3', '6(5)(4)3'],
    ['6...2', '6...2'],
    ['..34', '..34'],
    ['34..', '34..'],
    ['5.3.1', '5(4)3(2)1'],
    ['0.0', '0(0)0'],
    ['....', '....'],
    ['', ''],
  ])('in %s gives %s', (given, filled) => expect(picture(night(given))).toBe(filled));

  it('gets humidity and pressure from the same line, and no spread', () => {
    const { hours } = fillShortGaps(night('6..3'));
    expect(hours[1]).toMatchObject({
      relativeHumidity: expect.closeTo(0.5, 9),
      pressure: expect.closeTo(98_500, 6),
      spread: null,
    });
  });

  it('leaves the rows it was given as they were', () => {
    const rows = night('6..3');
    const before = structuredClone(rows);
    fillShortGaps(rows);
    expect(rows).toEqual(before);
  });
});
