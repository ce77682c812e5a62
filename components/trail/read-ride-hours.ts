import { ASSUMED_RELATIVE_HUMIDITY } from '@/lib/contract/air-from-json';
import { clockOf } from '@/lib/fields/clock-text';
import type { FieldReader } from '@/lib/fields/field-reader';
import { readNumberRow } from '@/lib/fields/table-values';
import { type HourDraft, RIDE_HOUR, type RideDraft, TRAIL } from '@/lib/fields/trail/trail-rows';
import type { HourSeries } from '@/lib/hours/series';
import { byNoModel, typedSeries } from '@/lib/hours/typed';
import { localDate } from '@/lib/time/zone';
import type { Ride } from '@/lib/trail/ride';
import { ridingTimes } from '@/lib/trail/riding-times';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { ratio } from '@/lib/units/quantity';
import { airProblemSentence } from '@/lib/words/air-problems';
import { clockProblemSentence } from '@/lib/words/clock-problems';
import { exampleParts } from './example-ride';
import { heightOf } from './read-ride-fields';

type Riding = { readonly zone: string; readonly ride: Ride };

/** Typed temperatures over the day, the first on the ride's own date. */
export function typedHours(draft: RideDraft, { zone, ride }: Riding, fields: FieldReader): HourSeries | null {
  const elevation = heightOf(TRAIL.ride.rows.hoursElevation, draft.hoursElevation, 'hoursElevation', fields);
  const typed = draft.hours.flatMap((hour, i) => hourOf(hour, i, fields));
  if (elevation === null || typed.length < draft.hours.length) return null;
  if (typed.length < 2) {
    fields.complain('hours', 'Type two temperatures or more, from before the start to after the end.');
    return null;
  }
  const times = ridingTimes(
    dateOf(draft, ride, zone),
    typed.map(({ clock }) => clock),
    zone,
  );
  if (!times.ok) {
    fields.complain(`hours.${times.reason.index}.clock`, clockProblemSentence(times.reason.problem));
    return null;
  }
  const series = typedSeries({
    points: typed.map(({ celsius }, i) => ({
      at: times.value[i]!,
      temperature: celsiusToKelvin(celsius),
      relativeHumidity: null,
      dewPoint: null,
      pressure: null,
    })),
    elevation,
    pressure: { kind: 'standard', elevation },
    relativeHumidity: ratio(ASSUMED_RELATIVE_HUMIDITY),
    stepMinutes: 60,
  });
  if (series.ok)
    return exampleParts(draft, fields.units).hours ? byNoModel(series.value.series) : series.value.series;
  fields.complain('hours', typedProblem(series.reason, fields.units));
  return null;
}

type TypedReason = Extract<ReturnType<typeof typedSeries>, { ok: false }>['reason'];

function typedProblem(reason: TypedReason, units: UnitChoice): string {
  switch (reason.code) {
    case 'no-points':
      return 'Type two temperatures or more.';
    case 'same-time':
      return 'Two temperatures stand at the same time.';
    case 'not-air':
      return airProblemSentence(reason.problem, units);
  }
}

function hourOf({ clock, temperature }: HourDraft, i: number, fields: FieldReader) {
  const read = clockOf(clock);
  if (read === null) fields.complain(`hours.${i}.clock`, 'Type a clock time, such as 07:00 or 7 am.');
  const celsius = readNumberRow(RIDE_HOUR.rows.temperature, temperature, `hours.${i}.temperature`, fields);
  return read === null || celsius === undefined ? [] : [{ clock: read, celsius }];
}

/** The date the hours begin on: that of the ride, which for a track ridden as recorded is the track's own. */
function dateOf(draft: RideDraft, ride: Ride, zone: string): string {
  return draft.way === 'typed' || draft.startClock.trim() !== ''
    ? draft.date
    : localDate(ride.stops[0]!.arrive, zone);
}
