import type { PlaceJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { ForecastJson } from '@/lib/contract/forecast';
import type { ForecastRecord } from '@/lib/store/records';
import { HOUR_MS, type Instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';

type Answer = {
  readonly answer: ForecastJson;
  readonly place: PlaceJson;
  readonly now: Instant;
  /** What was kept until now. */
  readonly before: ForecastRecord | null;
};

/** How far back hours of an older forecast are worth keeping: a reading of this evening must find its hour. */
const KEEP_MS = 24 * HOUR_MS;

/** A forecast as the browser keeps it. */
export function forecastRecordFrom({ answer, place, now, before }: Answer): ForecastRecord {
  return {
    place,
    forecast: {
      ...answer,
      fetchedAt: answer.fetchedAt ?? isoUtc(now),
      hours: [...earlierHours(answer, place, before), ...answer.hours],
    },
  };
}

/** Hours of the forecast before that lie before the first of the new one, where both are for the same spot. */
function earlierHours(
  answer: ForecastJson,
  place: PlaceJson,
  before: ForecastRecord | null,
): ForecastRecord['forecast']['hours'] {
  const first = answer.hours[0];
  if (before === null || first === undefined || !sameSpot(before, answer, place)) return [];
  const start = instantFromJson(first.time);
  return before.forecast.hours.filter(({ time }) => {
    const at = instantFromJson(time);
    return at < start && at >= start - KEEP_MS;
  });
}

function sameSpot(before: ForecastRecord, answer: ForecastJson, place: PlaceJson): boolean {
  return (
    before.place.latitude === place.latitude &&
    before.place.longitude === place.longitude &&
    before.forecast.elevationM === answer.elevationM
  );
}
