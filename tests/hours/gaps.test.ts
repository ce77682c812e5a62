import { describe, expect, it } from 'vitest';
import { airAtInstant, hourAt } from '@/lib/hours/at';
import { movePressure, moveSeries, moveTemperature } from '@/lib/hours/elevation-shift';
import { fillShortGaps } from '@/lib/hours/gaps';
import { celsiusToKelvin, hectopascalToPascal, pascalToHectopascal } from '@/lib/units/convert';
import { kelvin, metre } from '@/lib/units/quantity';
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

describe('the air at a moment between hours', () => {
  const series = forecast([
    hour('18:00', -6),
    hour('19:00', -8, { pressure: hectopascalToPascal(978) }),
    hour('02:00', -20),
  ]);

  it('lies on the curve through the hours', () => {
    expect(hourAt(series, clock('19:00'))).toBe(series.hours[1]);
    const air = airAtInstant(series, clock('18:30'));
    expect(air?.temperature).toBeLessThan(celsiusToKelvin(-6));
    expect(air?.temperature).toBeGreaterThan(celsiusToKelvin(-8));
    expect(pascalToHectopascal(air!.pressure)).toBeGreaterThan(978);
    expect(air?.relativeHumidity).toBeCloseTo(0.75, 12);
  });

  it('is not there before the first hour, after the last, or in a gap too long to fill', () => {
    for (const time of ['17:59', '02:01', '22:00']) expect(airAtInstant(series, clock(time))).toBeNull();
    expect(airAtInstant(series, clock('02:00'))?.temperature).toBe(celsiusToKelvin(-20));
    expect(airAtInstant(forecast([]), clock('18:00'))).toBeNull();
  });
});

describe('air moved from the height of the forecast to the height of the track', () => {
  // ISO 2533:1975, printed table: height [m], temperature [K], pressure [hPa].
  it.each([
    [0, 288.15, 1013.25, 500, 284.9, 954.608],
    [300, 286.2, 977.725, 800, 282.95, 920.763],
    [800, 282.95, 920.763, 100, 287.5, 1001.29],
  ])('follows the standard atmosphere from %s m', (h1, t1, p1, h2, t2, p2) => {
    const climb = { from: metre(h1), to: metre(h2) };
    expect(moveTemperature(kelvin(t1), climb)).toBeCloseTo(t2, 9);
    // Six printed figures.
    expect(
      Math.abs(pascalToHectopascal(movePressure(hectopascalToPascal(p1), kelvin(t1), climb)) - p2),
    ).toBeLessThan(0.005);
  });

  it('falls faster in cold air', () => {
    const climb = { from: metre(200), to: metre(500) };
    const fall = (celsius: number) =>
      980 - pascalToHectopascal(movePressure(hectopascalToPascal(980), celsiusToKelvin(celsius), climb));
    expect(fall(-30)).toBeGreaterThan(fall(15) * 1.15);
  });

  it('comes back where it started', () => {
    const there = moveSeries(forecast([hour('18:00', -6)]), metre(1200));
    const back = moveSeries(there, metre(250));
    expect(back.hours[0]?.temperature).toBeCloseTo(celsiusToKelvin(-6), 9);
    expect(back.hours[0]?.pressure).toBeCloseTo(98_000, 6);
    expect(there.hours[0]?.pressure).toBeLessThan(88_000);
    expect(moveSeries(back, metre(250))).toBe(back);
  });
});
