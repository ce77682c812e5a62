import { expect } from 'vitest';
import type { Air, AirGiven, Humidity, PressureGiven } from '@/lib/air/air';
import { airFrom } from '@/lib/air/air-from';
import { expectOk } from '@/lib/result/result';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { metre, ratio } from '@/lib/units/quantity';

/** Short ways to write down air in tests: °C, hPa, relative humidity 0 to 1, m. */
export const relative = (value: number): Humidity => ({ kind: 'relative', value: ratio(value) });
export const dewPoint = (celsius: number): Humidity => ({
  kind: 'dew-point',
  value: celsiusToKelvin(celsius),
});
export const frostPoint = (celsius: number): Humidity => ({
  kind: 'frost-point',
  value: celsiusToKelvin(celsius),
});

export const station = (hpa: number, elevationM?: number): PressureGiven => ({
  kind: 'station',
  value: hectopascalToPascal(hpa),
  ...(elevationM === undefined ? {} : { elevation: metre(elevationM) }),
});
export const altimeter = (hpa: number, elevationM: number): PressureGiven => ({
  kind: 'altimeter',
  value: hectopascalToPascal(hpa),
  elevation: metre(elevationM),
});
export const seaLevel = (hpa: number, elevationM: number): PressureGiven => ({
  kind: 'sea-level',
  value: hectopascalToPascal(hpa),
  elevation: metre(elevationM),
});
export const standard = (elevationM: number): PressureGiven => ({
  kind: 'standard',
  elevation: metre(elevationM),
});

export const givenAir = (celsius: number, pressure: PressureGiven, humidity: Humidity): AirGiven => ({
  temperature: celsiusToKelvin(celsius),
  pressure,
  humidity,
});

export const airOf = (celsius: number, pressure: PressureGiven, humidity: Humidity): Air =>
  expectOk(airFrom(givenAir(celsius, pressure, humidity)));

/** Checks a value against another to a relative tolerance. */
export function expectWithin(value: number, expected: number, relativeTolerance: number): void {
  const off = Math.abs(value / expected - 1);
  expect(off, `${value} is ${(off * 100).toPrecision(3)} % off ${expected}`).toBeLessThanOrEqual(
    relativeTolerance,
  );
}
