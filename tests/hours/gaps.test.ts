import { describe, expect, it } from 'vitest';
import { hourAt } from '@/lib/hours/at';
import { fillListed, fillShortGaps } from '@/lib/hours/gaps';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { celsiusToKelvin, hectopascalToPascal, pascalToHectopascal } from '@/lib/units/convert';
import { pascal, ratio } from '@/lib/units/quantity';
import { clock, degrees, forecast, hour, told } from './nights';

describe('a forecast with hours missing', () => {
  it('has short gaps filled and marked', () => {
    const { series, gaps } = fillShortGaps(
      forecast([hour('18:00', -6), hour('19:00', -7), hour('22:00', -10), hour('23:00', -11)]),
    );
    expect(told(series.hours)).toEqual([
      '18:00 -6 forecast',
      '19:00 -7 forecast',
      '20:00 -8 filled',
      '21:00 -9 filled',
      '22:00 -10 forecast',
      '23:00 -11 forecast',
    ]);
    expect(gaps).toEqual([]);
  });

  it('is filled where the service steps by six hours, not where more is missing', () => {
    expect(fillShortGaps(forecast([hour('18:00', -6), hour('00:00', -12)])).series.hours).toHaveLength(7);
    const long = fillShortGaps(forecast([hour('18:00', -6), hour('01:00', -12)]));
    expect(told(long.series.hours)).toEqual(['18:00 -6 forecast', '01:00 -12 forecast']);
    expect(long.gaps).toEqual([{ from: clock('18:00'), to: clock('01:00') }]);
  });

  it('keeps finer steps as they are', () => {
    const quarter = forecast([hour('18:00', -6), hour('18:15', -6.2), hour('18:30', -6.4)]);
    expect(fillShortGaps(quarter).series.hours).toEqual(quarter.hours);
  });

  it('keeps the kind of pressure of the hour before, and a spread only where both ends have one', () => {
    const { series } = fillShortGaps(
      forecast([
        hour('18:00', -6, { pressureFrom: 'sea-level', spread: degrees(1) }),
        hour('20:00', -8, { spread: degrees(2) }),
      ]),
    );
    expect(series.hours[1]).toMatchObject({ pressureFrom: 'sea-level', spread: 1.5, origin: 'filled' });
    const bare = fillShortGaps(forecast([hour('18:00', -6, { spread: degrees(1) }), hour('20:00', -8)]));
    expect(bare.series.hours[1]?.spread).toBeNull();
  });
});

describe('hours that a service lists without a value', () => {
  /** A night as a row of signs: a digit is an hour that many kelvin above -10 °C, a dot an hour without a value. */
  function picture(night: string): string {
    const all = [...night].map((sign, i) => ({ sign, at: instant(i * HOUR_MS) }));
    const given = all.filter(({ sign }) => sign !== '.');
    const { hours, missing } = fillListed(
      given.map(({ sign, at }) => ({ ...hour('18:00', Number(sign) - 10), at })),
      all.filter(({ sign }) => sign === '.').map(({ at }) => at),
    );
    return all
      .map(({ at }) => {
        const found = hours.find((candidate) => candidate.at === at);
        if (found === undefined) return missing.includes(at) ? '.' : '?';
        const kelvins = Number((found.temperature - celsiusToKelvin(-10)).toFixed(6));
        return found.origin === 'filled' ? `(${kelvins})` : String(kelvins);
      })
      .join('');
  }

  it.each([
    ['5.3', '5(4)3'],
    ['6..3', '6(5)(4)3'],
    ['6.....0', '6(5)(4)(3)(2)(1)0'],
    ['6......0', '6......0'],
    ['..34', '..34'],
    ['34..', '34..'],
    ['5.3.1', '5(4)3(2)1'],
    ['5.......5.5', '5.......5(5)5'],
    ['0.0', '0(0)0'],
    ['....', '....'],
    ['', ''],
  ])('in %s give %s', (given, filled) => expect(picture(given)).toBe(filled));

  it('get humidity and pressure the same way, and say who gave the hour before', () => {
    const [a, b] = [
      hour('18:00', -6, { pressure: pascal(98_600), relativeHumidity: ratio(0.6) }),
      hour('21:00', -9, { pressure: pascal(98_300), relativeHumidity: ratio(0.3) }),
    ].map((each, i) => ({ ...each, by: i }));
    const { hours } = fillListed([a!, b!], [clock('19:00')]);
    expect(hours[1]).toMatchObject({
      relativeHumidity: expect.closeTo(0.5, 9),
      pressure: expect.closeTo(98_500, 6),
      by: 0,
      origin: 'filled',
    });
  });

  it('leaves the hours it was given as they were', () => {
    const hours = [hour('18:00', -6), hour('21:00', -9)];
    const before = structuredClone(hours);
    fillListed(hours, [clock('19:00'), clock('23:00')]);
    expect(hours).toEqual(before);
  });
});

describe('the air at a moment between hours', () => {
  const series = forecast([
    hour('18:00', -6),
    hour('19:00', -8, { pressure: hectopascalToPascal(978) }),
    hour('02:00', -20),
  ]);

  it('lies on the curve through the hours', () => {
    expect(hourAt(series, clock('19:00'))).toBe(series.hours[1]);
    const between = hourAt(series, clock('18:30'));
    expect(between?.temperature).toBeLessThan(celsiusToKelvin(-6));
    expect(between?.temperature).toBeGreaterThan(celsiusToKelvin(-8));
    expect(pascalToHectopascal(between!.pressure)).toBeGreaterThan(978);
    expect(between?.relativeHumidity).toBeCloseTo(0.75, 12);
  });

  it('is not there before the first hour, after the last, or in a gap too long to fill', () => {
    for (const time of ['17:59', '02:01', '22:00']) expect(hourAt(series, clock(time))).toBeNull();
    expect(hourAt(series, clock('02:00'))?.temperature).toBe(celsiusToKelvin(-20));
    expect(hourAt(forecast([]), clock('18:00'))).toBeNull();
  });
});
