import { clockOf } from '@/lib/fields/clock-text';
import type { FieldReader } from '@/lib/fields/field-reader';
import { WAY_KM } from '@/lib/fields/number-kinds';
import { readNumberRow } from '@/lib/fields/table-values';
import { RIDE_PLACE, type RideDraft, TRAIL } from '@/lib/fields/trail/trail-rows';
import { addMinutes } from '@/lib/time/instant';
import { pointsBetween, type Ride, type RideStop, rideProblem } from '@/lib/trail/ride';
import { ridingTimes } from '@/lib/trail/riding-times';
import { metre } from '@/lib/units/quantity';
import { clockProblemSentence } from '@/lib/words/clock-problems';
import { placeNames } from '@/lib/words/place-names';
import { rideProblemSentence } from '@/lib/words/ride';
import { heightOf } from './read-ride-fields';

/** A ride between typed places. */
export function typedRide(draft: RideDraft, zone: string, fields: FieldReader): Ride | null {
  const clocks = draft.places.map(({ clock }, i) => {
    const read = clockOf(clock);
    if (read === null) fields.complain(`places.${i}.clock`, 'Type a clock time, such as 10:30 or 10:30 am.');
    return read;
  });
  const heights = draft.places.map(({ elevation }, i) =>
    heightOf(RIDE_PLACE.rows.elevation, elevation, `places.${i}.elevation`, fields),
  );
  const stops = draft.places.map(
    ({ stop }, i) => readNumberRow(RIDE_PLACE.rows.stop, stop, `places.${i}.stop`, fields) ?? 0,
  );
  if (clocks.some((clock) => clock === null) || heights.some((height) => height === null)) return null;
  const times = ridingTimes(
    draft.date,
    clocks.filter((clock) => clock !== null),
    zone,
  );
  if (!times.ok) {
    const { index, problem } = times.reason;
    const dated = problem.code === 'not-a-date';
    fields.complain(dated ? 'date' : `places.${index}.clock`, clockProblemSentence(problem));
    return null;
  }
  const places = draft.places.map(
    ({ name }, i): RideStop => ({
      name: name.trim(),
      elevation: metre(heights[i] ?? 0),
      arrive: times.value[i]!,
      leave: addMinutes(times.value[i]!, stops[i] ?? 0),
    }),
  );
  const problem = rideProblem(places);
  if (problem !== null) {
    const place = 'place' in problem ? problem.place : null;
    const named = placeNames(places, fields.units);
    const field = place === null ? 'places' : `places.${place}.clock`;
    fields.complain(
      field,
      rideProblemSentence(problem, (index) => named[index] ?? ''),
    );
    return null;
  }
  return { stops: places, points: pointsBetween(places), distance: distanceOf(draft, fields) };
}

function distanceOf({ distance }: RideDraft, fields: FieldReader) {
  const kilometres = readNumberRow(TRAIL.ride.rows.distance, distance, 'distance', fields);
  if (kilometres === undefined) return null;
  if (kilometres > 0 && kilometres <= 2000 * WAY_KM[fields.units.elevation]) return metre(kilometres * 1000);
  fields.complain('distance', 'More than 0 and at most 2000.');
  return null;
}
