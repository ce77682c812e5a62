import { type EventJson, type PlaceJson, placeOfEventSchema } from '@/lib/contract/event';
import { parseWith } from '@/lib/contract/parse';
import { type Axis, readCoordinate, readCoordinatePair } from '@/lib/fields/coordinate';
import { coordinateWords } from '@/lib/fields/event/read-event';
import { type FormReading, fieldReader } from '@/lib/fields/field-reader';
import { type DraftOf, type FieldTable, groupOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import { formReading } from '@/lib/fields/form-reading';
import { fieldAt, readFields } from '@/lib/fields/table-values';
import { LATITUDE, LONGITUDE } from './coordinates';

export type TypedPlace = { readonly place: PlaceJson; readonly elevationM: EventJson['elevationM'] };

const f = fieldRowsFor<TypedPlace>();

/** A map gives both coordinates at once. */
const both = (text: string) => readCoordinatePair(text) ?? {};

/** Where a forecast is wanted. */
export const PLACE = {
  top: groupOf(
    {
      search: f.text({ label: 'Search a place' }),
      /** The name that was chosen from what the search found; '' where none was. */
      searched: f.kept<string>(''),
      latitude: f.raw(LATITUDE),
      longitude: f.raw(LONGITUDE),
      name: f.text({
        label: 'Name of the place',
        at: 'place.name',
        hint: 'As you call it.',
        maxLength: 120,
        autoComplete: 'off',
      }),
      elevation: f.elevation({
        label: 'Elevation of the track',
        at: 'elevationM',
        example: '402',
        hint: ({ elevation }) =>
          `It counts: ${elevation === 'm' ? '50 m are 0.65' : '150 ft are 0.6'} % of density.`,
      }),
    },
    { sets: { latitude: both, longitude: both } },
  ),
} satisfies FieldTable;

export type PlaceDraft = DraftOf<typeof PLACE>;

/** Both coordinates where they can be read, else null. */
export function pointOf(draft: PlaceDraft): { readonly latitude: number; readonly longitude: number } | null {
  const latitude = readCoordinate(draft.latitude, 'latitude');
  const longitude = readCoordinate(draft.longitude, 'longitude');
  return latitude === null || longitude === null ? null : { latitude, longitude };
}

/** The place as typed, or what is wrong with which field. */
export function readPlace(draft: PlaceDraft): FormReading<TypedPlace> {
  const reader = fieldReader(draft.units);
  const coordinate = (axis: Axis, example: string) => () => {
    const value = readCoordinate(draft[axis], axis);
    if (value !== null) return value;
    const sentence =
      draft[axis].trim() === ''
        ? `A forecast is for a point. Search the place, use your location, or type the ${axis}, such as ${example}.`
        : coordinateWords(draft[axis], { axis, example });
    reader.complain(axis, sentence);
    return undefined;
  };
  const read = readFields(PLACE, draft, reader, {
    latitude: coordinate('latitude', '47.42'),
    longitude: coordinate('longitude', '-93.61'),
  });
  return formReading(reader, read, {
    parse: (json) => parseWith(placeOfEventSchema, json),
    fieldOf: (path) => fieldAt(PLACE, draft, path) ?? 'elevation',
  });
}
