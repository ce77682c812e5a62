import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airFrom } from '@/lib/air/air-from';
import { stationPressure } from '@/lib/air/pressure';
import { type TypedNight, typedSeries } from '@/lib/hours/typed';
import { expectOk } from '@/lib/result/result';
import { celsiusToKelvin, hectopascalToPascal, pascalToHectopascal } from '@/lib/units/convert';
import { metre, ratio } from '@/lib/units/quantity';
import { clock, night, point, told } from './nights';

const hoursOf = (given: TypedNight) => expectOk(typedSeries(given)).series.hours;

describe('a night typed as a few points', () => {
  it('has hours between them, marked as such', () => {
    // By hand: slopes -8/3 at 18:00 and -9/7 at 20:00, so (-6 - 10)/2 + (2/8)(-8/3 + 9/7) = -8.345.
    expect(told(hoursOf(night([point('18:00', -6), point('20:00', -10), point('21:00', -11)])))).toEqual([
      '18:00 -6 typed',
      '19:00 -8.35 between',
      '20:00 -10 typed',
      '21:00 -11 typed',
    ]);
  });

  it('may be typed in any order and stays as it was given', () => {
    const points = [point('21:00', -11), point('18:00', -6), point('20:00', -10)];
    expect(told(hoursOf(night(points))).filter((text) => text.endsWith('typed'))).toEqual([
      '18:00 -6 typed',
      '20:00 -10 typed',
      '21:00 -11 typed',
    ]);
    expect(points[0]?.temperature).toBe(celsiusToKelvin(-11));
  });

  it('can be drawn at half hours', () => {
    expect(told(hoursOf(night([point('18:00', -6), point('19:00', -8)], { stepMinutes: 30 })))).toEqual([
      '18:00 -6 typed',
      '18:30 -7 between',
      '19:00 -8 typed',
    ]);
  });

  it('puts hours where the clock of most points stands, beside odd ones', () => {
    expect(
      told(hoursOf(night([point('18:00', -6), point('19:40', -8), point('21:00', -10)]))).map((text) =>
        text.slice(0, 5),
      ),
    ).toEqual(['18:00', '19:00', '19:40', '20:00', '21:00']);
  });

  it('is one hour where one point is typed', () => {
    expect(told(hoursOf(night([point('18:00', 0)])))).toEqual(['18:00 0 typed']);
  });

  it('is not drawn over more than twelve hours, and says where it stops', () => {
    const { series, gaps } = expectOk(
      typedSeries(night([point('18:00', -6), point('06:00', -20), point('11:59', -9)])),
    );
    expect(series.hours).toHaveLength(12 + 1 + 6);
    expect(gaps).toEqual([]);
    const far = expectOk(typedSeries(night([point('17:00', -6), point('05:01', -20)])));
    expect(told(far.series.hours)).toEqual(['17:00 -6 typed', '05:01 -20 typed']);
    expect(far.gaps).toEqual([{ from: clock('17:00'), to: clock('05:01') }]);
  });

  it('never gets colder than its coldest typed hour', () => {
    const minutes = fc.uniqueArray(fc.integer({ min: 0, max: 700 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(
        minutes,
        fc.array(fc.integer({ min: -40, max: 30 }), { minLength: 8, maxLength: 8 }),
        (times, temperatures) => {
          const points = times.map((minute, i) =>
            point(`${Math.floor(minute / 60) + 12}:${minute % 60}`, temperatures[i] ?? 0),
          );
          const hours = hoursOf(night(points));
          const [coldest, warmest] = [
            Math.min(...points.map((p) => p.temperature)),
            Math.max(...points.map((p) => p.temperature)),
          ];
          expect(
            hours.every(({ temperature }) => temperature >= coldest - 1e-9 && temperature <= warmest + 1e-9),
          ).toBe(true);
          expect(hours.every(({ at }, i) => i === 0 || at > (hours[i - 1]?.at ?? 0))).toBe(true);
          expect(hours.filter(({ origin }) => origin === 'typed')).toHaveLength(points.length);
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('pressure and humidity of typed hours', () => {
  it('come from what was asked once, hour by hour', () => {
    const seaLevel = {
      kind: 'sea-level',
      value: hectopascalToPascal(1020),
      elevation: metre(600),
    } as const;
    const hours = hoursOf(
      night([point('18:00', 0), point('22:00', -20)], { pressure: seaLevel, elevation: metre(600) }),
    );
    expect(hours.map(({ pressureFrom }) => pressureFrom)).toEqual(hours.map(() => 'sea-level'));
    expect(hours[0]?.pressure).toBeCloseTo(stationPressure(seaLevel, celsiusToKelvin(0), ratio(0.8)), 6);
    expect(hours[4]?.pressure).toBeCloseTo(stationPressure(seaLevel, celsiusToKelvin(-20), ratio(0.8)), 6);
    // A colder column is heavier: the same sea-level number leaves less above 600 m.
    expect(pascalToHectopascal(hours[0]!.pressure) - pascalToHectopascal(hours[4]!.pressure)).toBeGreaterThan(
      4,
    );
    expect(hours.every(({ relativeHumidity }) => relativeHumidity === 0.8)).toBe(true);
  });

  it('are estimates, and marked so, where no pressure was given', () => {
    const hours = hoursOf(
      night([point('18:00', 0), point('20:00', -2)], {
        pressure: { kind: 'standard', elevation: metre(250) },
      }),
    );
    expect(hours.map(({ pressureFrom }) => pressureFrom)).toEqual(['standard', 'standard', 'standard']);
    // ISO 2533:1975, table 5, 250 m lies between 1001.29 hPa (100 m) and 977.725 hPa (300 m); p0 (T/T0)^5.25588.
    expect(pascalToHectopascal(hours[0]!.pressure)).toBeCloseTo(
      1013.25 * ((288.15 - 0.0065 * 250) / 288.15) ** 5.25588,
      2,
    );
  });

  it('are those read at the track where any was, drawn between readings and held outside', () => {
    const station = (hpa: number) => ({ kind: 'station', value: hectopascalToPascal(hpa) }) as const;
    const hours = hoursOf(
      night([
        point('18:00', -6),
        point('19:00', -7, { pressure: station(985) }),
        point('21:00', -9, { pressure: station(983) }),
        point('22:00', -10),
      ]),
    );
    expect(hours.map(({ pressure }) => Number(pascalToHectopascal(pressure).toFixed(3)))).toEqual([
      985, 985, 984, 983, 983,
    ]);
    expect(hours.every(({ pressureFrom }) => pressureFrom === 'station')).toBe(true);
  });

  it('take a dew point for what it is, and humidity before the dew point', () => {
    const dewPoint = celsiusToKelvin(-12);
    const [first, second] = hoursOf(
      night([
        point('18:00', -10, { dewPoint }),
        point('19:00', -10, { dewPoint, relativeHumidity: ratio(0.5) }),
      ]),
    );
    const air = expectOk(
      airFrom({
        temperature: celsiusToKelvin(-10),
        pressure: { kind: 'station', value: hectopascalToPascal(985) },
        humidity: { kind: 'dew-point', value: dewPoint },
      }),
    );
    expect(first?.relativeHumidity).toBe(air.relativeHumidity);
    expect(second?.relativeHumidity).toBe(0.5);
  });

  it('take 0 percent for dry air, not for a missing number', () => {
    expect(hoursOf(night([point('18:00', -10, { relativeHumidity: ratio(0) })]))[0]?.relativeHumidity).toBe(
      0,
    );
  });
});

describe('typed hours that are refused', () => {
  const reason = (given: TypedNight) => {
    const result = typedSeries(given);
    return result.ok ? null : result.reason;
  };

  it('are none at all, or two at one time', () => {
    expect(reason(night([]))).toEqual({ code: 'no-points' });
    expect(reason(night([point('18:00', -6), point('19:00', -7), point('18:00', -8)]))).toEqual({
      code: 'same-time',
      at: clock('18:00'),
    });
  });

  it('hold a sea-level number called station pressure at a high track', () => {
    // 1015 hPa at 1600 m: the standard atmosphere there is 835 hPa (ISO 2533:1975, table 5).
    const pressure = { kind: 'station', value: hectopascalToPascal(1015) } as const;
    expect(reason(night([point('18:00', -6)], { elevation: metre(1600), pressure }))).toMatchObject({
      code: 'not-air',
      at: clock('18:00'),
      problem: { code: 'sea-level-number-as-station', elevation: 1600 },
    });
  });

  it('hold a dew point above the temperature, and say at which hour', () => {
    expect(
      reason(night([point('18:00', -6), point('19:00', -8, { dewPoint: celsiusToKelvin(-5) })])),
    ).toMatchObject({
      at: clock('19:00'),
      problem: { code: 'dew-point-above-temperature' },
    });
  });
});
