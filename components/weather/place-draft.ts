import type { Untaken } from '@/components/draft/untaken';
import type { EventJson, PlaceJson } from '@/lib/contract/event';
import { onlyUnits } from '@/lib/fields/only-units';
import { METRIC_UNITS, type UnitChoice } from '@/lib/units/choice';
import { elevationText, numberText } from '@/lib/units/entry-text';
import { metre } from '@/lib/units/quantity';

/** Where a forecast is wanted, as typed. */
export type PlaceDraft = {
  /** What bare numbers in this draft mean. */
  readonly units: UnitChoice;
  readonly search: string;
  /** The name that was chosen from what the search found; '' where none was. */
  readonly searched: string;
  readonly name: string;
  readonly latitude: string;
  readonly longitude: string;
  readonly elevation: string;
};

export const PLACE_SHAPE: PlaceDraft = {
  units: METRIC_UNITS,
  search: '',
  searched: '',
  name: '',
  latitude: '',
  longitude: '',
  elevation: '',
};

export function placeDraftOf({ place, elevationM }: EventJson, units: UnitChoice): PlaceDraft {
  return {
    units: onlyUnits(units),
    search: '',
    searched: '',
    name: place?.name ?? '',
    latitude: place === undefined ? '' : numberText(place.latitude),
    longitude: place === undefined ? '' : numberText(place.longitude),
    elevation: elevationText(metre(elevationM), units),
  };
}

/** A place that was searched for and not chosen is not the place of the forecast; null where there is none. */
export function untakenSearch({ search, searched }: PlaceDraft): Untaken<PlaceDraft> | null {
  if (search.trim() === '' || search === searched) return null;
  return {
    words: `“${search.trim()}” was typed to search for a place, and none was chosen: the coordinates below count. Choose one from the list, or save without it.`,
    take: null,
    leave: (before) => ({ ...before, search: '' }),
  };
}

/** The draft's fields for a point that was found: four decimals are eleven metres. */
export function pointFields({ name, latitude, longitude }: PlaceJson): Partial<PlaceDraft> {
  return { name, latitude: numberText(latitude, 4), longitude: numberText(longitude, 4) };
}

const LABELS: Readonly<Record<string, string>> = {
  search: 'Search a place',
  name: 'Name of the place',
  latitude: 'Latitude',
  longitude: 'Longitude',
  elevation: 'Elevation of the track',
};

export function placeLabel(name: string): string {
  return LABELS[name] ?? name;
}
