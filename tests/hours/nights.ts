import type { Hour, HourSeries } from '@/lib/hours/series';
import type { TypedNight, TypedPoint } from '@/lib/hours/typed';
import { expectOk } from '@/lib/result/result';
import { type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { readInstant } from '@/lib/time/zone';
import { celsiusToKelvin, hectopascalToPascal, kelvinToCelsius } from '@/lib/units/convert';
import { kelvinDifference, metre, ratio } from '@/lib/units/quantity';

const MIDNIGHT = expectOk(readInstant('2027-01-17T00:00:00-06:00'));

/** "21:30" on the evening of 16 January, "01:00" on the morning after, in Minnesota. */
export function clock(text: string): Instant {
  const [hour = 0, minute = 0] = text.split(':').map(Number);
  return instant(MIDNIGHT + ((hour >= 12 ? hour - 24 : hour) * 60 + minute) * MINUTE_MS);
}

export function hour(text: string, celsius: number, more: Partial<Hour> = {}): Hour {
  return {
    at: clock(text),
    temperature: celsiusToKelvin(celsius),
    pressure: hectopascalToPascal(980),
    pressureFrom: 'station',
    relativeHumidity: ratio(0.75),
    spread: null,
    origin: 'forecast',
    ...more,
  };
}

/** A forecast at 250 m. */
export function forecast(hours: readonly Hour[], elevation = 250): HourSeries {
  const source = {
    name: 'test service',
    attribution: 'a test',
    attributionUrl: null,
    issuedAt: null,
    fetchedAt: null,
    modelElevation: null,
  };
  return { hours, elevation: metre(elevation), source };
}

export function point(text: string, celsius: number, more: Partial<TypedPoint> = {}): TypedPoint {
  return {
    at: clock(text),
    temperature: celsiusToKelvin(celsius),
    relativeHumidity: null,
    dewPoint: null,
    pressure: null,
    ...more,
  };
}

export function night(points: readonly TypedPoint[], more: Partial<TypedNight> = {}): TypedNight {
  return {
    points,
    elevation: metre(250),
    pressure: { kind: 'altimeter', value: hectopascalToPascal(1015), elevation: metre(250) },
    relativeHumidity: ratio(0.8),
    stepMinutes: 60,
    ...more,
  };
}

/** "22:00 -12.5 typed" for each hour. */
export function told(hours: readonly Hour[]): string[] {
  return hours.map(({ at, temperature, origin }) => {
    const minutes = (Math.round((at - MIDNIGHT) / MINUTE_MS) + 24 * 60) % (24 * 60);
    const time = `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
    return `${time} ${Number(kelvinToCelsius(temperature).toFixed(2))} ${origin}`;
  });
}

export const degrees = kelvinDifference;
