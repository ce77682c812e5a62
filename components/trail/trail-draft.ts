import type { UnitChoice } from '@/lib/units/choice';

/** One condition as typed; what stood in past winters brings its own pressure and humidity. */
export type ConditionDraft = {
  readonly name: string;
  readonly temperature: string;
  /** Station pressure of past winters [hPa]; empty: the standard atmosphere at the place. */
  readonly stationHpa: string;
  /** Percent, of past winters; empty: assumed. */
  readonly humidity: string;
};

export type TrailPlaceDraft = {
  readonly name: string;
  readonly clock: string;
  /** Minutes stood still there. */
  readonly stop: string;
  readonly elevation: string;
};

export type HourDraft = { readonly clock: string; readonly temperature: string };

export type RideDraft = {
  readonly way: 'typed' | 'track';
  readonly date: string;
  readonly timezone: string;
  readonly places: readonly TrailPlaceDraft[];
  /** A profile as JSON; empty where no file was read. */
  readonly track: string;
  readonly untimed: string;
  readonly startClock: string;
  readonly speed: string;
  readonly heightStart: string;
  readonly heightMiddle: string;
  readonly heightEnd: string;
  readonly air: 'typed' | 'forecast';
  readonly hours: readonly HourDraft[];
  readonly hoursElevation: string;
  readonly latitude: string;
  readonly longitude: string;
  /** Fall of temperature over 1000 m or 1000 ft, in the person's degrees. */
  readonly fall: string;
  readonly swapMinutes: string;
  readonly fuel: 'per-hour' | 'per-distance';
  readonly fuelAmount: string;
  /** Length of a typed ride [km or mi by the unit of height]. */
  readonly distance: string;
};

export type CardDraft = {
  readonly coldest: string;
  readonly warmest: string;
  readonly step: string;
  readonly lowest: string;
  readonly highest: string;
  readonly rise: string;
  readonly shows: 'main' | 'main-screw' | 'main-screw-clip';
};

export type TrailDraft = {
  readonly units: UnitChoice;
  /** null could not be told from a text by a draft's shape: empty stands for none. */
  readonly machineId: string;
  readonly elevation: string;
  readonly conditions: readonly ConditionDraft[];
  readonly ride: RideDraft;
  readonly card: CardDraft;
};

export const NEW_CONDITION: ConditionDraft = { name: '', temperature: '', stationHpa: '', humidity: '' };
export const NEW_PLACE: TrailPlaceDraft = { name: '', clock: '', stop: '', elevation: '' };
export const NEW_HOUR: HourDraft = { clock: '', temperature: '' };
