import { describe, expect, it } from 'vitest';
import { typedSeriesFromJson } from '@/lib/contract/typed-hours-from-json';
import { expectOk } from '@/lib/result/result';
import { isoLocal } from '@/lib/time/zone';

const hour = (clock: string, temperatureC: number, more: object = {}) => ({
  time: `2027-01-16T${clock}:00-06:00`,
  temperatureC,
  ...more,
});
const STANDARD = { pressure: { kind: 'standard' }, relativeHumidity: 0.8 } as const;

describe('hours typed by a person', () => {
  it('are filled in between, and each says where it came from', () => {
    const { series } = expectOk(
      typedSeriesFromJson({ hours: [hour('21:00', -9), hour('18:00', -4)], ...STANDARD }, 402),
    );
    expect(
      series.hours.map(({ at, origin }) => [isoLocal(at, 'America/Chicago').slice(11, 16), origin]),
    ).toEqual([
      ['18:00', 'typed'],
      ['19:00', 'between'],
      ['20:00', 'between'],
      ['21:00', 'typed'],
    ]);
    expect(series.hours[0]?.pressureFrom).toBe('standard');
    expect(series.hours[0]?.relativeHumidity).toBe(0.8);
  });

  it('keep what was said of who made them, and between two hours only what both say', () => {
    const made = (...rawModels: readonly (boolean | undefined)[]) =>
      expectOk(
        typedSeriesFromJson(
          { hours: rawModels.map((rawModel, i) => hour(`${18 + 2 * i}:00`, -20, { rawModel })), ...STANDARD },
          402,
        ),
      ).series.hours.map(({ rawModel }) => rawModel);
    expect(made(false, false)).toEqual([false, false, false]);
    expect(made(false, true)).toEqual([false, undefined, true]);
    expect(made(undefined, false)).toEqual([undefined, undefined, false]);
  });

  it('take the pressure said once, by its kind', () => {
    const at = (kind: 'station' | 'altimeter' | 'sea-level', hpa: number) =>
      expectOk(
        typedSeriesFromJson(
          { hours: [hour('18:00', 10), hour('19:00', 10)], pressure: { kind, hpa }, relativeHumidity: 0.5 },
          1600,
        ),
      ).series.hours[0]?.pressure ?? Number.NaN;
    expect(at('station', 836)).toBeCloseTo(83_600, 6);
    // ISO 2533: (1 - 0.0065 1600 / 288.15)^5.25588 = 0.82442; 1013.25 hPa at sea level is 835.3 hPa at 1600 m.
    expect(Math.abs(at('altimeter', 1013.25) / 100 - 835.3)).toBeLessThan(0.2);
    expect(at('sea-level', 1013.25)).toBeLessThan(84_500);
  });

  it('take their own pressure and humidity before what was said once', () => {
    const { series } = expectOk(
      typedSeriesFromJson(
        {
          hours: [hour('18:00', 0, { pressureHpa: 960, relativeHumidity: 0.6 }), hour('20:00', 0)],
          pressure: { kind: 'station', hpa: 970 },
          relativeHumidity: 0.9,
        },
        402,
      ),
    );
    expect(series.hours[0]).toMatchObject({ pressure: 96_000, relativeHumidity: 0.6 });
  });

  it('are refused with the place of each wrong one', () => {
    const wrong = typedSeriesFromJson(
      {
        hours: [hour('18:00', 10), hour('18:00', 11), hour('19:00', 10, { pressureHpa: 1015 })],
        ...STANDARD,
      },
      1600,
      ['typed', 'hours'],
    );
    expect(wrong.ok ? [] : wrong.reason.map(({ path, reason }) => [path.join('.'), reason.code])).toEqual([
      ['typed.hours.2.pressureHpa', 'sea-level-number-as-station'],
      ['typed.hours.1.time', 'same-hour-twice'],
    ]);
    const none = typedSeriesFromJson({ hours: [], ...STANDARD }, 402);
    expect(none.ok ? null : none.reason[0]?.reason.code).toBe('no-hours');
  });
});
