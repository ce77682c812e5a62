import { complainOf } from '@/components/draft/complain-of';
import { type FieldReader, type FormReading, fieldReader } from '@/components/draft/field-reader';
import { withoutGaps } from '@/components/draft/without-gaps';
import { eventSchema } from '@/lib/contract/event';
import { parseWith } from '@/lib/contract/parse';
import type { Path } from '@/lib/contract/problem';
import type { TypedEvent } from '@/lib/night/record-with-event';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import { isoLocal, zoneExists } from '@/lib/time/zone';
import { type Axis, readCoordinate } from './coordinate';
import type { EventDraft } from './event-draft';
import { type TimedRun, timedRuns } from './timed-runs';

/** What an event's draft says: the event with its runs in order of time, or what is wrong with which field. */
export function readEvent(draft: EventDraft): FormReading<TypedEvent> {
  const reader = fieldReader(draft.units);
  if (draft.name.trim() === '')
    reader.complain('name', 'Give the event a name, such as “Friday night drags”.');
  const place = readPlace(draft, reader);
  const elevationM = reader.elevationM({ name: 'elevation', text: draft.elevation, example: '402' });
  if (!zoneExists(draft.timezone))
    reader.complain('timezone', 'Choose the time zone of the track from the list.');
  const runs = [...timedRuns(draft, reader)].sort((a, b) => a.start - b.start);
  const parsed = parseWith(
    eventSchema,
    withoutGaps({
      name: draft.name,
      timezone: draft.timezone,
      place,
      elevationM,
      runs: runs.map((run) => runJson(run, draft.timezone)),
      swapMinutes: draft.ride
        ? undefined
        : reader.number({
            name: 'swapMinutes',
            text: draft.swapMinutes,
            example: String(DEFAULT_OPTIONS.swapMinutes),
          }),
      ride: draft.ride,
    }),
  );
  if (!parsed.ok)
    complainOf(reader, parsed.reason, { fieldOf: eventField, voice: { zone: 'UTC', units: draft.units } });
  const errors = reader.errors();
  if (!parsed.ok || Object.keys(errors).length > 0) return { value: null, errors };
  return { value: { event: parsed.value, from: runs.map(({ from }) => from) }, errors };
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

/** The place, kept by its coordinates; undefined where none was typed. */
function readPlace(draft: EventDraft, reader: FieldReader): object | undefined {
  const typed = [draft.placeName, draft.latitude, draft.longitude].map((text) => text.trim() !== '');
  if (!typed.includes(true)) return undefined;
  const coordinate = (axis: Axis, example: string): number | undefined => {
    const value = readCoordinate(draft[axis], axis);
    if (value === null) reader.complain(axis, coordinateWords(draft[axis], { axis, example }));
    return value ?? undefined;
  };
  return {
    name: draft.placeName,
    latitude: coordinate('latitude', '47.42'),
    longitude: coordinate('longitude', '-93.61'),
  };
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

/** The field that a place in an event's JSON was typed in. Runs have been sorted, so their problems stand above them. */
function eventField(path: Path): string {
  const [head, second] = path;
  if (head === 'elevationM') return 'elevation';
  if (head === 'place') return second === 'name' ? 'placeName' : String(second ?? 'latitude');
  if (head === 'runs') return path.at(-1) === 'typicalSeconds' ? 'typicalSeconds' : 'runs';
  return path.join('.');
}
