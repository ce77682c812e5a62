import { instantFromJson } from '@/lib/contract/event-from-json';
import type { EventRecord } from '@/lib/store/records';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';

type ForecastQuestion = { readonly from: Instant; readonly hours: number };

/** Hours wanted around the runs: dusk before them, and how it goes on after them. */
const BEFORE_RUNS_MS = 6 * HOUR_MS;
const AFTER_RUNS_MS = 6 * HOUR_MS;
/** On the day itself the hours begin with the present one, so that a reading in the afternoon finds its hour. */
const SAME_DAY_MS = 24 * HOUR_MS;
const LEAST_HOURS = 24;
/** As far as our own API goes. */
const MOST_HOURS = 264;

/** All runs of an event, also those of its classes, as one stretch; null where there are none. */
export function stretchOfRuns({
  event,
  club,
}: EventRecord): { readonly start: Instant; readonly end: Instant } | null {
  const runs = [...event.runs, ...(club?.classes.flatMap((each) => each.runs) ?? [])];
  if (runs.length === 0) return null;
  const at = (times: readonly string[]) => times.map(instantFromJson);
  return {
    start: instant(Math.min(...at(runs.map(({ start }) => start)))),
    end: instant(Math.max(...at(runs.map(({ end }) => end)))),
  };
}

/** Whether an event follows a forecast at all. */
export function followsForecast({ forecastId, event }: EventRecord): boolean {
  return forecastId !== null && event.place !== undefined;
}

/** Which hours a night needs, from a little before its runs to a little after them. */
export function forecastQuestion(record: EventRecord, now: Instant): ForecastQuestion {
  const runs = stretchOfRuns(record) ?? { start: now, end: instant(now + 24 * HOUR_MS) };
  const early = Math.max(now - HOUR_MS, runs.start - SAME_DAY_MS);
  const from = Math.floor(Math.min(early, runs.start - BEFORE_RUNS_MS) / HOUR_MS) * HOUR_MS;
  const hours = Math.ceil((runs.end + AFTER_RUNS_MS - from) / HOUR_MS);
  return { from: instant(from), hours: Math.min(MOST_HOURS, Math.max(LEAST_HOURS, hours)) };
}

/** The address to ask; null where the event has no place. */
export function forecastAddress(record: EventRecord, now: Instant): string | null {
  const { place, elevationM } = record.event;
  if (place === undefined) return null;
  const { from, hours } = forecastQuestion(record, now);
  const query = new URLSearchParams({
    lat: String(place.latitude),
    lon: String(place.longitude),
    elevation: String(elevationM),
    from: isoUtc(from),
    hours: String(hours),
  });
  return `/api/forecast?${query}`;
}
