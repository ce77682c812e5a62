import { ifTyped } from '@/components/draft/field-reader';
import { clockOf } from '@/components/event/clock-text';
import { addMinutes } from '@/lib/time/instant';
import { pointsBetween, type Ride, type RideStop, rideProblem } from '@/lib/trail/ride';
import { ridingTimes } from '@/lib/trail/riding-times';
import { metre } from '@/lib/units/quantity';
import { clockProblemSentence } from '@/lib/words/clock-problems';
import { placeNames } from '@/lib/words/place-names';
import { rideProblemSentence } from '@/lib/words/ride';
import { WAY_KM } from './draft-in-units';
import { heightOf, type RideReader, rideMinutes } from './read-ride-fields';
import type { RideDraft } from './trail-draft';

/** A ride between typed places. */
export function typedRide(draft: RideDraft, zone: string, reading: RideReader): Ride | null {
  const { fields, units } = reading;
  const clocks = draft.places.map(({ clock }, i) => {
    const read = clockOf(clock);
    if (read === null) fields.complain(`places.${i}.clock`, 'Type a clock time, such as 10:30.');
    return read;
  });
  const heights = draft.places.map(({ elevation }, i) =>
    heightOf(elevation, `places.${i}.elevation`, reading),
  );
  const stops = draft.places.map(
    ({ stop }, i) => rideMinutes(stop, { name: `places.${i}.stop`, fields }) ?? 0,
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
    const named = placeNames(places, units);
    const field = place === null ? 'places' : `places.${place}.clock`;
    fields.complain(
      field,
      rideProblemSentence(problem, (index) => named[index] ?? ''),
    );
    return null;
  }
  return { stops: places, points: pointsBetween(places), distance: distanceOf(draft, reading) };
}

function distanceOf({ distance }: RideDraft, { fields, units }: RideReader) {
  const way = ifTyped(distance, () => fields.number({ name: 'distance', text: distance, example: '80' }));
  if (way === undefined) return null;
  if (way > 0 && way <= 2000) return metre(way * WAY_KM[units.elevation] * 1000);
  fields.complain('distance', 'More than 0 and at most 2000.');
  return null;
}
