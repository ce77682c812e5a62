import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import type { PlaceOffset } from '@/lib/plan/place-offset';
import { plainNumber } from '@/lib/units/format';
import { kelvinDifference } from '@/lib/units/quantity';
import type { EventJson } from './event';

const HOURS = 24;
const perHour = (value: z.ZodMiniNumber) => z.array(value).check(z.length(HOURS));

/** How a place differs from its forecasts, as past nights there taught. */
export const placeOffsetSchema = z
  .strictObject({
    kind: z
      .enum(['official', 'rawModel'])
      .check(about('The hours it was learnt against: it says nothing about the other kind.')),
    nights: z.int().check(z.minimum(1), z.maximum(10_000), about('How many nights taught it.')),
    ranK: z
      .number()
      .check(z.minimum(-60), z.maximum(60), about('Readings minus hours on those nights, on average [K].')),
    meanK: perHour(z.number().check(z.minimum(-20), z.maximum(20))).check(
      about('What is counted on [K], for 0 to 23 hours after sunset.'),
    ),
    sdK: perHour(z.number().check(z.minimum(0), z.maximum(5))).check(
      about('Its standard deviation [K], hour by hour.'),
    ),
  })
  .register(z.globalRegistry, { id: 'PlaceOffset' });

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
