import type { Metre } from '@/lib/units/quantity';

/** Degrees, north and east positive. */
export type Coordinates = { readonly latitude: number; readonly longitude: number };

/** Where the air is wanted, rounded as it goes out and into keys. Elevation null: the service's own for the place. */
export type Site = Coordinates & { readonly elevation: Metre | null };

/** A place found by name. */
export type Place = Coordinates & {
  readonly name: string;
  /** County, state, country: what tells it from others of its name. */
  readonly region: string;
  /** Of the town, not of the track; null where unknown. */
  readonly elevation: Metre | null;
  /** IANA time zone; null where unknown. */
  readonly zone: string | null;
};
