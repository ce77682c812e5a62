import { fieldsProblem, type Problem } from '@/app/api/_http/problem';
import { weatherProblem } from '@/app/api/_http/weather-problem';
import { lacksHumidity } from '@/lib/contract/air-from-json';
import { runsFromEvent } from '@/lib/contract/event-from-json';
import type { PlanAnswer } from '@/lib/contract/plan-answer';
import { type PlanRequestJson, siteOf } from '@/lib/contract/plan-request';
import { seriesFromJson } from '@/lib/contract/series-from-json';
import type { HourSeries } from '@/lib/hours/series';
import { fail, ok, type Result } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { metre } from '@/lib/units/quantity';
import type { Forecast } from '@/lib/weather/forecast';
import type { ForecastQuestion } from '@/lib/weather/get-forecast';
import type { WeatherProblem } from '@/lib/weather/problem';
import { humidityAssumedSentence, oldForecastSentence } from '@/lib/words/assumptions';
import type { Voice } from '@/lib/words/voice';

export type FetchForecast = (question: ForecastQuestion) => Promise<Result<Forecast, WeatherProblem>>;

export type HoursOfRequest = { readonly series: HourSeries; readonly warnings: PlanAnswer['warnings'] };
type Asker = {
  readonly fetchForecast: FetchForecast;
  readonly voice: Voice & { readonly runNames: readonly string[] };
};

/** Hours before the first run, for readings taken while setting up, and after the last one. */
const HOURS_BEFORE = 6;
const HOURS_AFTER = 2;

/** The hours to plan with: those sent, else the forecast for the place named. */
export async function hoursOfRequest(
  body: PlanRequestJson,
  asker: Asker,
): Promise<Result<HoursOfRequest, Problem>> {
  return body.hours === undefined ? fetchedHours(body, asker) : sentHours(body.hours, body, asker);
}

function sentHours(
  hours: NonNullable<PlanRequestJson['hours']>,
  { event }: PlanRequestJson,
  { voice }: Asker,
): Result<HoursOfRequest, Problem> {
  const series = seriesFromJson(hours, event.elevationM);
  if (!series.ok) return fail(fieldsProblem(series.reason, voice));
  const assumed = hours.some(lacksHumidity);
  const warnings = assumed ? [{ code: 'humidity-assumed', message: humidityAssumedSentence() }] : [];
  return ok({ series: series.value, warnings });
}

async function fetchedHours(
  body: PlanRequestJson,
  { fetchForecast, voice }: Asker,
): Promise<Result<HoursOfRequest, Problem>> {
  const site = siteOf(body);
  const times = runsFromEvent(body.event).flatMap(({ start, end }) => [start, end]);
  if (site === null || times.length === 0)
    return fail(fieldsProblem([{ path: ['event', 'runs'], reason: { code: 'no-runs' } }], voice));
  const [first, last] = [Math.min(...times), Math.max(...times)];
  const forecast = await fetchForecast({
    latitude: site.latitude,
    longitude: site.longitude,
    elevation: metre(body.event.elevationM),
    from: instant(first - HOURS_BEFORE * HOUR_MS),
    hours: Math.ceil((last - first) / HOUR_MS) + HOURS_BEFORE + HOURS_AFTER,
  });
  if (!forecast.ok) return fail(weatherProblem(forecast.reason, voice));
  const { freshness, source } = forecast.value;
  const message = oldForecastSentence(source.fetchedAt, voice.zone);
  return ok({
    series: forecast.value,
    warnings: freshness === 'stale' ? [{ code: 'forecast-is-old', message }] : [],
  });
}
