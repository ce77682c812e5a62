import { describe, expect, it } from 'vitest';
import { mixHours } from '@/lib/hours/mix';
import { dataAge, hoursProvenance, provenanceOf } from '@/lib/hours/provenance';
import type { HourSeries } from '@/lib/hours/series';
import { typedSeries } from '@/lib/hours/typed';
import { expectOk } from '@/lib/result/result';
import { hectopascalToPascal, pascalToHectopascal } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';
import { clock, forecast, hour, night, point } from './nights';

const MADE = clock('16:00');
const made = (series: HourSeries): HourSeries => ({
  ...series,
  source: { ...series.source, issuedAt: MADE },
});
const evening = made(
  forecast(['17:00', '18:00', '19:00', '20:00', '21:00', '22:00'].map((time, i) => hour(time, -i))),
);
const standard = { kind: 'standard', elevation: metre(250) } as const;
const typedOnly = (...points: ReturnType<typeof point>[]) =>
  expectOk(typedSeries(night(points, { pressure: standard }))).series;
const of = (series: HourSeries | undefined, time: string) => {
  const found = series?.hours.find(({ at }) => at === clock(time));
  if (found === undefined || series === undefined) throw new Error(`no hour at ${time}`);
  return { hour: found, told: provenanceOf(found, series.source) };
};

describe('typed temperatures before a forecast', () => {
  const mixed = mixHours(evening, typedOnly(point('19:00', -12), point('21:00', -14)))?.series;

  it('keep the pressure of the forecast where none was typed', () => {
    for (const time of ['19:00', '20:00', '21:00']) {
      const { hour: found, told } = of(mixed, time);
      expect(pascalToHectopascal(found.pressure)).toBeCloseTo(980, 9);
      expect(found.pressureFrom).toBe('station');
      expect(told.temperature.by).toBeNull();
      expect(told.pressure).toMatchObject({ by: 'test service' });
      expect(told.madeAt).toBe(MADE);
    }
  });

  it('keep a pressure that was typed', () => {
    const own = point('19:00', -12, {
      pressure: { kind: 'station', value: hectopascalToPascal(971), elevation: metre(250) },
    });
    const { hour: found, told } = of(mixHours(evening, typedOnly(own))?.series, '19:00');
    expect(pascalToHectopascal(found.pressure)).toBeCloseTo(971, 9);
    expect(told).toEqual({
      temperature: { origin: 'typed', by: null },
      pressure: { origin: 'typed', by: null },
      madeAt: null,
    });
  });

  it('keep the estimate where the forecast has no pressure either, or does not reach', () => {
    const without = {
      ...evening,
      hours: evening.hours.map((each) => ({ ...each, pressureFrom: 'standard' as const })),
    };
    expect(of(mixHours(without, typedOnly(point('19:00', -12)))?.series, '19:00').told.pressure).toBe(
      'standard',
    );
    expect(of(mixHours(evening, typedOnly(point('01:00', -12)))?.series, '01:00').told.pressure).toBe(
      'standard',
    );
  });

  it('are never called fresh, however new the forecast behind them', () => {
    expect(dataAge(hoursProvenance(evening), clock('17:00'))).toBe('fresh');
    expect(dataAge(hoursProvenance(mixed!), clock('17:00'))).toBe('part typed');
    const covering = typedOnly(point('17:00', -12), point('22:00', -14));
    expect(dataAge(hoursProvenance(mixHours(evening, covering)!.series), clock('17:00'))).toBe('typed');
  });

  it('keep the name and the age of the forecast that lends its pressure, also where no hour of its own is left', () => {
    const covering = typedOnly(point('17:00', -12), point('22:00', -14));
    const { told } = of(mixHours(evening, covering)?.series, '18:00');
    expect(told.pressure).toMatchObject({ by: 'test service' });
    expect(told.madeAt).toBe(MADE);
  });
});

describe('where all hours come from', () => {
  it('names each service once, and every row of typed hours', () => {
    const far = made(forecast(Array.from({ length: 24 }, (_, i) => hour(`${(12 + i) % 24}:00`, -i))));
    const mixed = mixHours(far, typedOnly(point('12:00', -3), point('13:00', -4), point('02:00', -14)));
    expect(hoursProvenance(mixed!.series)).toEqual({
      temperatureBy: ['test service'],
      typed: [
        { from: clock('12:00'), to: clock('13:00') },
        { from: clock('02:00'), to: clock('02:00') },
      ],
      pressureBy: ['test service'],
      pressureTyped: false,
      pressureStandard: false,
      madeAt: MADE,
    });
  });

  it('tells a lent pressure and an estimate from the service that told the temperature', () => {
    const lent = hour('18:00', -1, { temperatureBy: 'weather-gov', pressureBy: 'open-meteo' });
    const estimated = hour('19:00', -2, { temperatureBy: 'weather-gov', pressureFrom: 'standard' });
    expect(hoursProvenance(made(forecast([lent, estimated])))).toMatchObject({
      temperatureBy: ['weather-gov'],
      pressureBy: ['open-meteo'],
      pressureStandard: true,
    });
  });
});
