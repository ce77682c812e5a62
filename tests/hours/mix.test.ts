import { describe, expect, it } from 'vitest';
import { mixHours } from '@/lib/hours/mix';
import { typedSeries } from '@/lib/hours/typed';
import { expectOk } from '@/lib/result/result';
import { metre } from '@/lib/units/quantity';
import { clock, forecast, hour, night, point, told } from './nights';

const typed = (...points: ReturnType<typeof point>[]) => expectOk(typedSeries(night(points))).series;
const evening = forecast(
  ['17:00', '18:00', '19:00', '20:00', '21:00', '22:00', '23:00'].map((time, i) => hour(time, -i)),
);

describe('typed hours and a forecast together', () => {
  it('let typed hours win from the first to the last, and the forecast stand before and after', () => {
    const mixed = mixHours(evening, typed(point('19:00', -12), point('21:00', -14)));
    expect(told(mixed?.series.hours ?? [])).toEqual([
      '17:00 0 forecast',
      '18:00 -1 forecast',
      '19:00 -12 typed',
      '20:00 -13 between',
      '21:00 -14 typed',
      '22:00 -5 forecast',
      '23:00 -6 forecast',
    ]);
    expect(mixed?.gaps).toEqual([]);
  });

  it('say how far they stand apart where they meet', () => {
    const mixed = mixHours(evening, typed(point('19:30', -12), point('21:00', -14)));
    expect(mixed?.seams.map(({ at }) => at)).toEqual([clock('19:30'), clock('21:00')]);
    expect(mixed?.seams[0]?.typedMinusForecast).toBeCloseTo(-9.5, 9);
    expect(mixed?.seams[1]?.typedMinusForecast).toBeCloseTo(-10, 9);
    expect(told(mixed?.series.hours ?? [])).toContain('19:30 -12 typed');
  });

  it('count a single typed hour for that hour only', () => {
    const mixed = mixHours(evening, typed(point('20:00', -12)));
    expect(told(mixed?.series.hours ?? []).slice(2, 5)).toEqual([
      '19:00 -2 forecast',
      '20:00 -12 typed',
      '21:00 -4 forecast',
    ]);
    expect(mixed?.seams).toHaveLength(1);
  });

  it('let the forecast stand where typed hours lie more than twelve hours apart', () => {
    const long = forecast(Array.from({ length: 24 }, (_, i) => hour(`${(12 + i) % 24}:00`, -i)));
    const mixed = mixHours(long, typed(point('12:00', -30), point('13:00', -31), point('02:00', -40)));
    const hours = told(mixed?.series.hours ?? []);
    expect(hours).toHaveLength(24);
    expect(hours[2]).toBe('14:00 -2 forecast');
    expect(hours[14]).toBe('02:00 -40 typed');
    expect(mixed?.seams.map(({ at }) => at)).toEqual([clock('12:00'), clock('13:00'), clock('02:00')]);
  });

  it('move the forecast to the height of the track first', () => {
    const low = forecast([hour('17:00', -1), hour('18:00', -2), hour('19:00', -3)], 50);
    const mixed = mixHours(low, typed(point('18:00', -12)));
    // 200 m higher: 6.5 K/km colder (ISO 2533:1975), and about 25 hPa less.
    expect(told(mixed?.series.hours ?? [])[0]).toBe('17:00 -2.3 forecast');
    expect(mixed?.series.hours[0]?.pressure).toBeLessThan(95_700);
    expect(mixed?.series.elevation).toBe(metre(250));
    expect(mixed?.seams[0]?.typedMinusForecast).toBeCloseTo(-12 + 2 + 1.3, 9);
  });

  it('are the one where the other is missing, and nothing where both are', () => {
    expect(told(mixHours(evening, null)?.series.hours ?? [])).toHaveLength(7);
    expect(mixHours(null, typed(point('18:00', -5), point('19:00', -6)))?.series.source.name).toBe('typed');
    expect(mixHours(forecast([]), typed(point('18:00', -5)))?.series.hours).toHaveLength(1);
    expect(mixHours(null, null)).toBeNull();
    expect(mixHours(forecast([]), null)).toBeNull();
  });

  it('name the forecast as their source only where some of it is left', () => {
    expect(mixHours(evening, typed(point('18:00', -5)))?.series.source.name).toBe('test service');
    expect(mixHours(forecast([hour('18:00', -1)]), typed(point('18:00', -5)))?.series.source.name).toBe(
      'typed',
    );
  });

  it('are not changed by being mixed', () => {
    const hours = typed(point('19:00', -12), point('21:00', -14));
    const before = JSON.stringify([evening, hours]);
    mixHours(evening, hours);
    expect(JSON.stringify([evening, hours])).toBe(before);
  });
});
