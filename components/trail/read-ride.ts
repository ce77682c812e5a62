import { type FieldErrors, type FieldReader, fieldReader } from '@/lib/fields/field-reader';
import { WAY_KM } from '@/lib/fields/number-kinds';
import { readNumberRow } from '@/lib/fields/table-values';
import { type RideDraft, TRAIL } from '@/lib/fields/trail/trail-rows';
import { LAPSE_RANGE, type Lapse, lapse } from '@/lib/hours/elevation-shift';
import type { HourSeries } from '@/lib/hours/series';
import { zoneExists } from '@/lib/time/zone';
import type { Ride } from '@/lib/trail/ride';
import type { Consumption } from '@/lib/trail/ride-fuel';
import type { UnitChoice } from '@/lib/units/choice';
import { formatFuel } from '@/lib/units/format';
import { typedRide } from './read-places';
import { typedHours } from './read-ride-hours';
import { trackRide } from './read-track';

export type RideReading = {
  /** null where what is typed names no zone. */
  readonly zone: string | null;
  readonly ride: Ride | null;
  /** Typed hours; null where a forecast is to be used, or they cannot be. */
  readonly typedHours: HourSeries | null;
  readonly fall: Lapse | null;
  readonly swapMinutes: number;
  readonly consumption: Consumption | null;
  readonly errors: FieldErrors;
};

/** What the ride form says, as far as it can be used; every complaint stands beside its field. */
export function readRide(draft: RideDraft, units: UnitChoice): RideReading {
  const fields = fieldReader(units);
  const zone = zoneExists(draft.timezone) ? draft.timezone : null;
  if (zone === null) fields.complain('timezone', noZone(draft.timezone));
  const ride =
    zone === null
      ? null
      : draft.way === 'typed'
        ? typedRide(draft, zone, fields)
        : trackRide(draft, zone, fields);
  const hours =
    zone === null || draft.air !== 'typed' || ride === null
      ? null
      : typedHours(draft, { zone, ride }, fields);
  return {
    zone,
    ride,
    typedHours: hours,
    fall: fallOf(draft, fields),
    swapMinutes: readNumberRow(TRAIL.ride.rows.swapMinutes, draft.swapMinutes, 'swapMinutes', fields) ?? 20,
    consumption: consumptionOf(draft, fields),
    errors: fields.errors(),
  };
}

/** Said of a zone that is half typed as well, so it says what to do next. */
function noZone(typed: string): string {
  return typed.trim() === ''
    ? 'Choose the time zone of the ride: type a big city of it and take it from the list.'
    : `No time zone is called “${typed}”. Type a big city of it and take it from the list.`;
}

function fallOf({ fall }: RideDraft, fields: FieldReader): Lapse | null {
  const perKilometre = readNumberRow(TRAIL.ride.rows.fall, fall, 'fall', fields);
  if (perKilometre === undefined) return null;
  const perMetre = perKilometre / 1000;
  if (perMetre >= LAPSE_RANGE.least && perMetre <= LAPSE_RANGE.most) return lapse(perMetre);
  fields.complain('fall', 'More than air can do. The usual fall is 6.5 °C per 1000 m, 3.6 °F per 1000 ft.');
  return null;
}

function consumptionOf({ fuel, fuelUse }: RideDraft, fields: FieldReader): Consumption | null {
  const amount = readNumberRow(TRAIL.ride.rows.fuelUse, fuelUse, 'fuelUse', fields);
  if (amount === undefined) return null;
  if (!(amount > 0 && amount <= 200)) {
    fields.complain('fuelUse', `More than 0 and at most ${formatFuel(200, fields.units)}.`);
    return null;
  }
  return fuel === 'per-hour'
    ? { kind: 'per-hour', litres: amount }
    : { kind: 'per-distance', litresPerKilometre: amount / 100 / WAY_KM[fields.units.elevation] };
}
