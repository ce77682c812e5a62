import { type PressureDoubt, pressureDoubt } from '@/lib/air/pressure-doubt';
import { metre } from '@/lib/units/quantity';
import type { AirStateJson } from './air';
import { airFromJson } from './air-from-json';
import { type TypedHoursJson, typedSeriesFromJson } from './typed-hours-from-json';

/** What there is to ask about the pressure of an air as sent; null where nothing is, and where it cannot be known. */
export function airPressureDoubt(json: AirStateJson): PressureDoubt | null {
  if (json.pressureConfirmed === true || json.elevationM === undefined) return null;
  const air = airFromJson(json);
  return air.ok ? pressureDoubt(air.value, metre(json.elevationM)) : null;
}

/** The same of the first of the typed hours that is odd. */
export function hoursPressureDoubt(typed: TypedHoursJson, elevationM: number): PressureDoubt | null {
  const read = typedSeriesFromJson(typed, elevationM);
  if (!read.ok) return null;
  for (const hour of read.value.series.hours) {
    const doubt =
      hour.origin === 'typed' && hour.pressureConfirmed !== true
        ? pressureDoubt(hour, metre(elevationM))
        : null;
    if (doubt !== null) return doubt;
  }
  return null;
}
