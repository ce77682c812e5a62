import { readingFromJson, runsFromEvent } from '@/lib/contract/event-from-json';
import { placeOffsetFromJson } from '@/lib/contract/place-offset';
import { hourAt } from '@/lib/hours/at';
import { SAME_PLACE_M } from '@/lib/plan/judgement';
import { learnPlace, type PastEvent } from '@/lib/plan/learn-place';
import { type HoursKind, hoursKind, type PlaceOffset } from '@/lib/plan/place-offset';
import type { PlanRequest, Reading } from '@/lib/plan/types';
import type { EventRecord, ForecastRecord, Stored } from '@/lib/store/records';
import { distanceM } from '@/lib/weather/distance';
import { hoursOfNight } from './hours-of-night';

type Kept = {
  readonly events: readonly Stored<EventRecord>[];
  readonly forecasts: readonly Stored<ForecastRecord>[];
};

/** What the past nights in the store, or else whoever shared the night, taught about its place; null where nothing. */
export function placeTaught(tonight: Stored<EventRecord>, { events, forecasts }: Kept): PlaceOffset | null {
  const { event, demo, placeOffset } = tonight.value;
  const { place } = event;
  const first = Math.min(...runsFromEvent(event).map(({ start }) => start));
  if (demo || place === undefined || !Number.isFinite(first)) return null;
  const forecastOf = (record: EventRecord) =>
    forecasts.find(({ id }) => id === record.forecastId)?.value ?? null;
  const kind = kindTonight(tonight.value, forecastOf(tonight.value));
  if (kind === null) return null;
  const others = events.filter(({ id, value }) => id !== tonight.id && isThere(value, place));
  const heard = new Set<string>();
  const past = others.flatMap(({ value }): readonly PastEvent[] => {
    const before = value.readings.map(readingFromJson).filter(({ at }) => at < first);
    const readings = before.filter((reading) => isNew(reading, heard));
    const series = readings.length === 0 ? null : hoursOfNight(value, forecastOf(value));
    return series?.ok === true && series.value.hours.length > 0 ? [{ series: series.value, readings }] : [];
  });
  const { latitude, longitude } = place;
  const learnt = learnPlace(past, { place: { latitude, longitude }, kind });
  if (learnt !== null || placeOffset === undefined) return learnt;
  return placeOffsetFromJson(placeOffset, event);
}

function isThere({ event, demo }: EventRecord, place: NonNullable<EventRecord['event']['place']>): boolean {
  return !demo && event.place !== undefined && distanceM(event.place, place) <= SAME_PLACE_M;
}

/** A night that was kept twice, from a link or a file, teaches once. */
function isNew({ at, temperature }: Reading, heard: Set<string>): boolean {
  const key = `${at} ${temperature.toFixed(3)}`;
  if (heard.has(key)) return false;
  heard.add(key);
  return true;
}

/** The kind of hours the first run is planned with; null where there are none. */
function kindTonight(record: EventRecord, forecast: ForecastRecord | null): HoursKind | null {
  const series = hoursOfNight(record, forecast);
  if (series === null || !series.ok) return null;
  const { hours } = series.value;
  const start = runsFromEvent(record.event)[0]?.start;
  const hour = start === undefined ? null : hourAt(series.value, start);
  const there = hour === null ? hours[0] : hours.findLast(({ at }) => at <= hour.at);
  return there === undefined ? null : hoursKind(there);
}

/** What of it the plan counts on: all, unless the person has switched it off. */
export function countedOn(
  { withoutPlaceOffset }: EventRecord,
  placeOffset: PlaceOffset | undefined,
): Pick<PlanRequest, 'placeOffset'> {
  return placeOffset === undefined || withoutPlaceOffset === true ? {} : { placeOffset };
}
