import * as z from 'zod';
import type { PlaceOffset } from '@/lib/plan/place-offset';
import { plainNumber } from '@/lib/units/format';
import { kelvinDifference } from '@/lib/units/quantity';
import type { EventJson } from './event';

const HOURS = 24;
const perHour = (value: z.ZodNumber) => z.array(value).length(HOURS);

/** How a place differs from its forecasts, as past nights there taught. */
export const placeOffsetSchema = z
  .strictObject({
    kind: z
      .enum(['official', 'rawModel'])
      .describe('The hours it was learnt against: it says nothing about the other kind.'),
    nights: z.int().min(1).max(10_000).describe('How many nights taught it.'),
    ranK: z.number().min(-60).max(60).describe('Readings minus hours on those nights, on average [K].'),
    meanK: perHour(z.number().min(-20).max(20)).describe(
      'What is counted on [K], for 0 to 23 hours after sunset.',
    ),
    sdK: perHour(z.number().min(0).max(5)).describe('Its standard deviation [K], hour by hour.'),
  })
  .meta({ id: 'PlaceOffset' });

export type PlaceOffsetJson = z.output<typeof placeOffsetSchema>;

/** To a hundredth of a kelvin: 0.004 % of density. */
const DIGITS = 2;

export function placeOffsetToJson({ kind, nights, ran, byHour }: PlaceOffset): PlaceOffsetJson {
  return {
    kind,
    nights,
    ranK: plainNumber(ran, DIGITS),
    meanK: byHour.map(({ mean }) => plainNumber(mean, DIGITS)),
    sdK: byHour.map(({ sd }) => plainNumber(sd, DIGITS)),
  };
}

/** In the core's own terms, where the event has a place: without one nobody knows when the sun sets. */
export function placeOffsetFromJson(
  { kind, nights, ranK, meanK, sdK }: PlaceOffsetJson,
  { place }: Pick<EventJson, 'place'>,
): PlaceOffset | null {
  if (place === undefined) return null;
  return {
    place: { latitude: place.latitude, longitude: place.longitude },
    kind,
    nights,
    ran: kelvinDifference(ranK),
    byHour: meanK.map((mean, i) => ({ mean, sd: sdK[i]! })),
  };
}
