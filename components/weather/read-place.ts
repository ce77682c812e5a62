import { type EventJson, eventSchema, type PlaceJson } from '@/lib/contract/event';
import { parseWith } from '@/lib/contract/parse';
import { complainOf } from '@/lib/fields/complain-of';
import { type Axis, readCoordinate } from '@/lib/fields/coordinate';
import { coordinateWords } from '@/lib/fields/event/read-event';
import { type FormReading, fieldReader } from '@/lib/fields/field-reader';
import type { PlaceDraft } from './place-draft';

export type TypedPlace = { readonly place: PlaceJson; readonly elevationM: EventJson['elevationM'] };

const placeOfEvent = eventSchema.pick({ place: true, elevationM: true }).required();

/** Both coordinates where they can be read, else null. */
export function pointOf(draft: PlaceDraft): { readonly latitude: number; readonly longitude: number } | null {
  const latitude = readCoordinate(draft.latitude, 'latitude');
  const longitude = readCoordinate(draft.longitude, 'longitude');
  return latitude === null || longitude === null ? null : { latitude, longitude };
}

/** The place as typed, or what is wrong with which field. */
export function readPlace(draft: PlaceDraft): FormReading<TypedPlace> {
  const reader = fieldReader(draft.units);
  const coordinate = (axis: Axis, example: string): number | undefined => {
    const value = readCoordinate(draft[axis], axis);
    if (value !== null) return value;
    const sentence =
      draft[axis].trim() === ''
        ? `A forecast is for a point. Search the place, use your location, or type the ${axis}, such as ${example}.`
        : coordinateWords(draft[axis], { axis, example });
    reader.complain(axis, sentence);
    return undefined;
  };
  const parsed = parseWith(placeOfEvent, {
    place: {
      name: draft.name,
      latitude: coordinate('latitude', '47.42'),
      longitude: coordinate('longitude', '-93.61'),
    },
    elevationM: reader.read('elevation', { name: 'elevation', text: draft.elevation, example: '402' }),
  });
  if (!parsed.ok)
    complainOf(reader, parsed.reason, {
      fieldOf: ([head, second]) => (head === 'place' ? String(second ?? 'latitude') : 'elevation'),
      zone: 'UTC',
    });
  const errors = reader.errors();
  return parsed.ok && Object.keys(errors).length === 0
    ? { value: parsed.value, errors }
    : { value: null, errors };
}
