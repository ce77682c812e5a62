import { describe, expect, it } from 'vitest';
import { instant } from '@/lib/time/instant';
import { celsiusToKelvin, kelvinToCelsius } from '@/lib/units/convert';
import { metre, pascal } from '@/lib/units/quantity';
import { nearbyReading } from '@/lib/weather/stations/nearby-reading';

const OBSERVED = {
  station: 'KXYZ',
  at: instant(Date.UTC(2027, 0, 16, 22, 55)),
  temperature: celsiusToKelvin(-8),
  dewPoint: celsiusToKelvin(-11),
  altimeter: pascal(102_540),
  wind: null,
};
const at = (distance: number | null, elevation: number | null, site: number) =>
  nearbyReading(
    OBSERVED,
    {
      distance: distance === null ? null : metre(distance),
      elevation: elevation === null ? null : metre(elevation),
    },
    metre(site),
  );

describe('A station as a reading at the site', () => {
  it('has the pressure that is there, not the altimeter setting: Flagstaff', () => {
    // A3028 at 2137 m is a station pressure of 791.6 hPa (WMO-No. 8 reduction as in MetPy); used raw it is 30 % off.
    expect(Math.abs(at(0, 2137, 2137).stationPressure! - 79_160)).toBeLessThan(60);
  });

  it('is moved by 6.5 K/km, and its pressure through the air between', () => {
    const up = at(5_000, 300, 700);
    expect(kelvinToCelsius(up.temperature)).toBeCloseTo(-8 - 2.6, 9);
    // About 1 hPa in 8 m; 400 m at -9 °C: ln p falls by g h/(R T).
    const same = at(5_000, 300, 300);
    const fall = Math.log(same.stationPressure! / up.stationPressure!);
    expect(fall).toBeCloseTo((9.80665 * 400) / (287.053 * (265.15 - 1.3)), 3);
  });

  it('keeps the humidity, and has none without a dew point', () => {
    // e(-11)/e(-8) over water, Murphy & Koop (2005): 2.65/3.35 hPa.
    expect(at(0, 300, 300).relativeHumidity).toBeCloseTo(0.79, 2);
    const dry = nearbyReading({ ...OBSERVED, dewPoint: null }, { distance: null, elevation: null }, metre(0));
    expect(dry.relativeHumidity).toBeNull();
  });

  it('is the less sure the farther and the higher or lower the station is', () => {
    const sds = [at(0, 300, 300), at(2_000, 300, 300), at(20_000, 300, 300), at(20_000, 300, 500)];
    for (const [i, { sd }] of sds.entries()) {
      if (i === 0) continue;
      expect(sd.temperature).toBeGreaterThan(sds[i - 1]!.sd.temperature);
      expect(sd.pressure).toBeGreaterThanOrEqual(sds[i - 1]!.sd.pressure);
    }
    // A thermometer beside the track, and a place that tells no more than a forecast.
    expect(sds[0]!.sd.temperature).toBe(0.5);
    expect(at(80_000, 300, 300).sd.temperature).toBeCloseTo(Math.hypot(0.5, 2.5), 2);
    expect(at(5_000, 500, 300).sd).toEqual(at(5_000, 100, 300).sd);
  });

  it('of which nobody told where it stands is taken for far away', () => {
    expect(at(null, null, 300).sd.temperature).toBeGreaterThan(at(30_000, 300, 300).sd.temperature);
    expect(at(null, null, 300).temperature).toBe(OBSERVED.temperature);
  });
});
