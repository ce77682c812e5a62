import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { saturationOverWater } from '@/lib/air/saturation';
import { expectOk } from '@/lib/result/result';
import { instant } from '@/lib/time/instant';
import { celsiusToKelvin, hectopascalToPascal, pascalToHectopascal } from '@/lib/units/convert';
import { metre, ratio } from '@/lib/units/quantity';
import { completeHours } from '@/lib/weather/complete-hours';
import type { ServiceAnswer, ServiceHour } from '@/lib/weather/service-hour';

const NOTHING: Omit<ServiceHour, 'at'> = {
  temperature: null,
  relativeHumidity: null,
  dewPoint: null,
  stationPressure: null,
  seaLevelPressure: null,
  spread: null,
};

function answerOf(elevation: number, hour: Partial<ServiceHour>): ServiceAnswer {
  return {
    hours: [{ at: instant(0), ...NOTHING, ...hour }],
    elevation: metre(elevation),
    issuedAt: null,
    place: null,
    conflicting: [],
  };
}

/**
 * Station pressure by adding up the weight of the air in one-metre layers from the sea to the site: dp/p = -g dz/(R Tv),
 * g and R of ISO 2533:1975, 6.5 K/km, the site's vapour pressure throughout. Independent of the closed forms in lib.
 */
function layerByLayer(
  seaLevelHpa: number,
  site: { celsius: number; elevation: number; humidity: number },
): number {
  const vapourHpa = (site.humidity * saturationOverWater(celsiusToKelvin(site.celsius))) / 100;
  let pressure = seaLevelHpa;
  for (let z = 0.5; z < site.elevation; z += 1) {
    const temperature = site.celsius + 273.15 + 0.0065 * (site.elevation - z);
    const virtual = temperature / (1 - (0.378 * vapourHpa) / pressure);
    pressure *= Math.exp(-9.80665 / (287.05287 * virtual));
  }
  return pressure;
}

/** Open-Meteo's own reduction (open-meteo/open-meteo, Meteorology.swift): it takes the air for dry. */
function asOpenMeteo(seaLevelHpa: number, celsius: number, elevation: number): number {
  return seaLevelHpa * (1 - (0.0065 * elevation) / (celsius + 273.15 + 0.0065 * elevation)) ** 5.25578;
}

describe('station pressure from a service that gives only sea-level pressure', () => {
  it.each([
    { seaLevel: 1015, celsius: -20, elevation: 2000, humidity: 0.7 },
    { seaLevel: 1035, celsius: -20, elevation: 2000, humidity: 1 },
    { seaLevel: 995, celsius: -20, elevation: 2000, humidity: 0.4 },
    { seaLevel: 1015, celsius: -35, elevation: 600, humidity: 0.7 },
    { seaLevel: 1015, celsius: 5, elevation: 1200, humidity: 0.9 },
  ])('is right within 0.3 hPa: $seaLevel hPa, $celsius °C, $elevation m', (given) => {
    const answer = answerOf(given.elevation, {
      temperature: celsiusToKelvin(given.celsius),
      relativeHumidity: ratio(given.humidity),
      seaLevelPressure: hectopascalToPascal(given.seaLevel),
    });
    const { hours } = expectOk(completeHours(answer, metre(given.elevation)));
    const station = pascalToHectopascal(hours[0]!.pressure!);
    expect(Math.abs(station - layerByLayer(given.seaLevel, given))).toBeLessThan(0.3);
  });

  it.each([995, 1015, 1035])(
    'agrees with the reduction of another service, at -20 °C and 2000 m: %d hPa',
    (seaLevel) => {
      const hour = {
        temperature: celsiusToKelvin(-20),
        relativeHumidity: ratio(0.7),
        seaLevelPressure: hectopascalToPascal(seaLevel),
      };
      const { hours } = expectOk(completeHours(answerOf(2000, hour), metre(2000)));
      expect(
        Math.abs(pascalToHectopascal(hours[0]!.pressure!) - asOpenMeteo(seaLevel, -20, 2000)),
      ).toBeLessThan(0.3);
    },
  );

  it("goes by the hour's temperature: 20 K colder is 14.8 hPa less at 2000 m", () => {
    const at = (celsius: number): number => {
      const hour = {
        temperature: celsiusToKelvin(celsius),
        relativeHumidity: ratio(0),
        seaLevelPressure: hectopascalToPascal(1015),
      };
      const { hours } = expectOk(completeHours(answerOf(2000, hour), metre(2000)));
      return pascalToHectopascal(hours[0]!.pressure!);
    };
    const layers = (celsius: number) => layerByLayer(1015, { celsius, elevation: 2000, humidity: 0 });
    expect(at(0) - at(-20)).toBeCloseTo(layers(0) - layers(-20), 1);
    expect(layers(0) - layers(-20)).toBeCloseTo(14.8, 1);
  });
});

describe('a move to the site', () => {
  it('leaves a service that was told the elevation alone', () => {
    const hour = {
      temperature: celsiusToKelvin(-10),
      relativeHumidity: ratio(0.8),
      stationPressure: hectopascalToPascal(985.1),
    };
    const { hours } = expectOk(completeHours(answerOf(280, hour), metre(280)));
    expect(hours[0]).toMatchObject({ temperature: 263.15, pressure: 98_510, pressureFrom: 'station' });
  });

  it('asks nothing of numbers no air can have: it refuses them', () => {
    fc.assert(
      fc.property(
        fc.record({
          temperature: fc.option(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 })),
          relativeHumidity: fc.option(
            fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }),
          ),
          dewPoint: fc.option(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 })),
          stationPressure: fc.option(
            fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }),
          ),
          seaLevelPressure: fc.option(
            fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }),
          ),
        }),
        fc.integer({ min: -430, max: 6000 }),
        (raw, elevation) => {
          // The service's numbers are finite, and that is all that is known of them.
          const hours = completeHours(answerOf(300, raw as Partial<ServiceHour>), metre(elevation));
          for (const hour of hours.ok ? hours.value.hours : []) {
            expect(hour.temperature).toBeGreaterThan(200);
            expect(hour.temperature).toBeLessThan(340);
            if (hour.pressure !== null) expect(hour.pressure).toBeGreaterThan(40_000);
          }
        },
      ),
    );
  });
});
