import { runsFromEvent } from '@/lib/contract/event-from-json';
import { hoursProvenance } from '@/lib/hours/provenance';
import type { HourSeries } from '@/lib/hours/series';
import type { Result } from '@/lib/result/result';
import { joinedHours } from '@/lib/share/joined-hours';
import { sharedSeries } from '@/lib/share/night-requests';
import { settledAt } from '@/lib/share/revision';
import type { SharedNight } from '@/lib/share/shared-night';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { metre } from '@/lib/units/quantity';
import type { Forecast } from '@/lib/weather/forecast';
import type { ForecastQuestion } from '@/lib/weather/get-forecast';
import type { WeatherProblem } from '@/lib/weather/problem';
import type { FeedHours } from '@/lib/words/feed';

export type FetchForecast = (question: ForecastQuestion) => Promise<Result<Forecast, WeatherProblem>>;

export type LiveHours = {
  readonly series: HourSeries | null;
  readonly words: FeedHours;
  /** False where asking again soon may give a better answer. */
  readonly fresh: boolean;
};

/** Hours before the first run, for readings taken while setting up, and after the last one. */
const HOURS_BEFORE = 6;
const HOURS_AFTER = 2;

/** The newest hours there are for a shared night: a forecast where one is wanted and to be had, else those it carries. */
export async function liveHours(
  night: SharedNight,
  { fetchForecast, clock }: { readonly fetchForecast: FetchForecast; readonly clock: Instant },
): Promise<LiveHours> {
  const read = sharedSeries(night);
  const shared = read.ok && read.value.hours.length > 0 ? read.value : null;
  const told = shared === null ? null : hoursProvenance(shared);
  const runs = runsFromEvent(night.event);
  if (runs.every((run) => settledAt(run, night.event.swapMinutes) <= clock))
    return { series: shared, words: { from: 'over' }, fresh: true };
  if (night.hoursTyped === true)
    return { series: shared, words: { from: 'link', because: 'typed', told }, fresh: true };
  const question = questionOf(night);
  if (question === null)
    return { series: shared, words: { from: 'link', because: 'no-place', told }, fresh: true };
  const forecast = await fetchForecast(question);
  if (forecast.ok) return withForecast(forecast.value, shared);
  const because = forecast.reason.code === 'outside-forecast' ? 'too-far-ahead' : 'no-answer';
  return { series: shared, words: { from: 'link', because, told }, fresh: false };
}

function questionOf({ event }: SharedNight): ForecastQuestion | null {
  if (event.place === undefined) return null;
  const times = runsFromEvent(event).flatMap(({ start, end }) => [start, end]);
  const [first, last] = [Math.min(...times), Math.max(...times)];
  return {
    latitude: event.place.latitude,
    longitude: event.place.longitude,
    elevation: metre(event.elevationM),
    from: instant(first - HOURS_BEFORE * HOUR_MS),
    hours: Math.ceil((last - first) / HOUR_MS) + HOURS_BEFORE + HOURS_AFTER,
  };
}

function withForecast(forecast: Forecast, shared: HourSeries | null): LiveHours {
  const { source, freshness } = forecast;
  const { name, attribution } = source;
  const provenance = hoursProvenance(forecast);
  const fresh = freshness === 'fresh';
  // When a fresh copy was fetched is chance; without it every instance plans alike with the same hours.
  const told = { ...forecast, source: fresh ? { ...source, fetchedAt: null } : source };
  return {
    series: shared === null ? told : joinedHours(shared, told),
    words: fresh
      ? { from: 'forecast', name, attribution, told: provenance }
      : { from: 'old-forecast', name, attribution, fetchedAt: source.fetchedAt, told: provenance },
    fresh,
  };
}
