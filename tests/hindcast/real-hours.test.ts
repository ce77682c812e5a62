import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Hours carried over from typical years: whether they were carried over right. */

const FIXTURES = join(import.meta.dirname, '..', 'fixtures', 'hindcast');
const HOURS = [17, 18, 19, 20, 21, 22, 23, 24, 1, 2, 3];

type Row = {
  readonly night: string;
  readonly hour: number;
  readonly t: number;
  readonly dewPoint: number;
  readonly humidity: number;
  readonly pressure: number;
};

function rowsOf(name: string): readonly Row[] {
  const [head = '', ...lines] = readFileSync(join(FIXTURES, name), 'utf8').trim().split('\n');
  expect(head).toBe('night_of,local_standard_time_hour_ending,t_C,td_C,RH_pct,p_station_Pa');
  return lines.map((line) => {
    const [night = '', ...numbers] = line.split(',');
    const [hour, t, dewPoint, humidity, pressure] = numbers.map(Number);
    return { night, hour: hour!, t: t!, dewPoint: dewPoint!, humidity: humidity!, pressure: pressure! };
  });
}

/** Standard atmosphere, ISO 2533 [hPa]. */
const standardPressure = (metres: number) => 1013.25 * (1 - 0.0065 * (metres / 288.15)) ** 5.2559;

/** Magnus form of the saturation vapour pressure over water, as in WMO-No. 8: August-Roche coefficients, from memory. */
const saturation = (celsius: number) => Math.exp((17.625 * celsius) / (243.04 + celsius));

describe.each([
  ['hours-chicago-il-201m-tmy3-jan.csv', 201, [['1986-01-01', 30]]],
  [
    'hours-boulder-co-1689m-tmy3-jan-feb.csv',
    1689,
    [
      ['1987-01-01', 3],
      ['1990-02-01', 27],
    ],
  ],
] as const)('the hours of %s', (name, elevation, stretches) => {
  const rows = rowsOf(name);

  it('follow one another, night after night', () => {
    const nights = stretches.flatMap(([first, count]) =>
      Array.from({ length: count }, (_, i) =>
        new Date(Date.parse(first) + i * 86_400_000).toISOString().slice(0, 10),
      ),
    );
    expect(rows.map(({ night, hour }) => `${night} ${hour}`)).toEqual(
      nights.flatMap((night) => HOURS.map((hour) => `${night} ${hour}`)),
    );
  });

  /** Each temperature is rounded to 0.1 K (0.4 % of humidity at most), humidity to 1 %; the rest is another formula. */
  it('have a temperature, a dew point and a humidity that agree', () => {
    for (const row of rows) {
      const humidity = (100 * saturation(row.dewPoint)) / saturation(row.t);
      expect(Math.abs(humidity - row.humidity), JSON.stringify(row)).toBeLessThan(1.5);
    }
  });

  /** "Very rapidly" in forecasts for shipping is over 6 hPa in three hours (UK Met Office, marine glossary; from memory). */
  it('have a pressure that belongs to the height and changes as pressure does', () => {
    for (const [i, row] of rows.entries()) {
      expect(Math.abs(row.pressure / 100 - standardPressure(elevation)), JSON.stringify(row)).toBeLessThan(
        35,
      );
      const before = i % HOURS.length === 0 ? row : rows[i - 1]!;
      expect(Math.abs(row.pressure - before.pressure), JSON.stringify(row)).toBeLessThanOrEqual(300);
      const earlier = i % HOURS.length < 3 ? row : rows[i - 3]!;
      expect(Math.abs(row.pressure - earlier.pressure), JSON.stringify(row)).toBeLessThanOrEqual(600);
    }
  });
});
