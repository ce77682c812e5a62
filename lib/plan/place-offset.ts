import type { Hour } from '@/lib/hours/series';
import type { Instant } from '@/lib/time/instant';
import type { SunPlace } from '@/lib/time/sun';
import type { KelvinDifference } from '@/lib/units/quantity';
import { hoursAfterSunset } from './after-sunset';
import { PLACE_MOST_OF_LASTING, PLACE_SD } from './judgement';

/** What kind of hours an offset was learnt against; it says nothing about the other kind. */
export type HoursKind = keyof typeof PLACE_SD;

/** How a place differs from what is forecast for it, as past nights there taught. */
export type PlaceOffset = {
  readonly place: SunPlace;
  readonly kind: HoursKind;
  /** How many nights taught it. */
  readonly nights: number;
  /** What those nights were on average, readings minus hours [K], before it was shrunk. */
  readonly ran: KelvinDifference;
  /** Of every hour after sunset, 0 to 23 [K]: what is counted on, and its standard deviation. */
  readonly byHour: readonly OffsetAtHour[];
};

export type OffsetAtHour = { readonly mean: number; readonly sd: number };

export function hoursKind(hour: Pick<Hour, 'rawModel'>): HoursKind {
  return hour.rawModel === true ? 'rawModel' : 'official';
}

/** The offset at an instant: straight lines between the hours after sunset. */
export function offsetAt({ byHour, place }: PlaceOffset, at: Instant): OffsetAtHour {
  const hour = hoursAfterSunset(at, place);
  const before = Math.floor(hour) % byHour.length;
  const [a, b] = [byHour[before]!, byHour[(before + 1) % byHour.length]!];
  const share = hour - Math.floor(hour);
  return { mean: a.mean + (b.mean - a.mean) * share, sd: a.sd + (b.sd - a.sd) * share };
}

/** What is known about an hour: its mean offset [K], and the variance between places that is no longer open [K²]. */
export function knownOffset(
  offset: PlaceOffset | undefined,
  hour: Hour,
): { readonly mean: number; readonly variance: number } {
  if (offset === undefined || offset.kind !== hoursKind(hour)) return { mean: 0, variance: 0 };
  const { mean, sd } = offsetAt(offset, hour.at);
  return { mean, variance: Math.max(0, PLACE_SD[offset.kind] ** 2 - sd ** 2) };
}

/** What stays all night besides the place [K²]: the variance that stays, without what is known to be the place's. */
export function lastingLeft(lasting: number, known: number): number {
  return lasting - Math.min(known, PLACE_MOST_OF_LASTING * lasting);
}
