import { eventSchema } from '@/lib/contract/event';
import { parseWith } from '@/lib/contract/parse';
import type { Path } from '@/lib/contract/problem';
import { type Axis, readCoordinate } from '@/lib/fields/coordinate';
import { type FormReading, fieldReader } from '@/lib/fields/field-reader';
import { formReading } from '@/lib/fields/form-reading';
import { fieldAt, readFields } from '@/lib/fields/table-values';
import { withoutGaps } from '@/lib/fields/without-gaps';
import type { TypedEvent } from '@/lib/night/record-with-event';
import { isoLocal, zoneExists } from '@/lib/time/zone';
import { EVENT, type EventDraft } from './event-rows';
import { type TimedRun, timedRuns } from './timed-runs';

/** What an event's draft says: the event with its runs in order of time, or what is wrong with which field. */
export function readEvent(draft: EventDraft): FormReading<TypedEvent> {
  const reader = fieldReader(draft.units);
  // A place is kept by its coordinates; none was typed where all of it is empty.
  const placed = [draft.placeName, draft.latitude, draft.longitude].some((text) => text.trim() !== '');
  const coordinate = (axis: Axis, example: string) => () => {
    const value = placed ? readCoordinate(draft[axis], axis) : undefined;
    if (value === null) reader.complain(axis, coordinateWords(draft[axis], { axis, example }));
    return value ?? undefined;
  };
  let runs: readonly TimedRun[] = [];
  const read = readFields(EVENT, draft, reader, {
    placeName: () => (placed ? draft.placeName : undefined),
    latitude: coordinate('latitude', '47.42'),
    longitude: coordinate('longitude', '-93.61'),
    timezone: () => {
      if (!zoneExists(draft.timezone))
        reader.complain('timezone', 'Choose the time zone of the track from the list.');
      return draft.timezone;
    },
    // The runs stand here in the form.
    how: () => {
      runs = [...timedRuns(draft, reader)].sort((a, b) => a.start - b.start);
    },
  });
  const event = formReading(
    reader,
    { ...read, runs: runs.map((run) => runJson(run, draft.timezone)) },
    {
      parse: (json) => parseWith(eventSchema, json),
      fieldOf: (path) => eventField(path) ?? fieldAt(EVENT, draft, path) ?? path.join('.'),
    },
  );
  return {
    value: event.value === null ? null : { event: event.value, from: runs.map(({ from }) => from) },
    errors: event.errors,
  };
}

function runJson({ name, start, end, weight, typicalSeconds }: TimedRun, zone: string): object {
  return withoutGaps({
    name,
    start: isoLocal(start, zone),
    end: isoLocal(end, zone),
    weight,
    typicalSeconds,
  });
}

export function coordinateWords(
  text: string,
  { axis, example }: { readonly axis: Axis; readonly example: string },
): string {
  if (text.trim() === '')
    return `A place is kept by its coordinates. Type the ${axis}, such as ${example}, or clear the place.`;
  const most = axis === 'latitude' ? '90° south to 90° north' : '180° west to 180° east';
  return `“${text.trim()}” is not a ${axis}. Type degrees from ${most}, such as ${example}.`;
}

/** Runs have been sorted, so their problems stand above them. */
function eventField(path: Path): string | null {
  if (path[0] !== 'runs') return null;
  return path.at(-1) === 'typicalSeconds' ? 'typicalSeconds' : 'runs';
}
