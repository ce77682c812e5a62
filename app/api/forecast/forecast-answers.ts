import { fieldsProblem, type Problem } from '@/app/api/_http/problem';
import { parameters } from '@/app/api/_http/query';
import { sharedAnswer } from '@/app/api/_http/shared-answer';
import { weatherProblem } from '@/app/api/_http/weather-problem';
import { parseWith } from '@/lib/contract/parse';
import { fail, ok, type Result } from '@/lib/result/result';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { METRIC_UNITS } from '@/lib/units/choice';
import type { Forecast } from '@/lib/weather/forecast';
import { forecastToJson } from '@/lib/weather/forecast-json';
import { getForecast } from '@/lib/weather/get-forecast';
import { createBoundedCache } from '@/lib/weather/request/bounded-cache';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { forecastQuerySchema, forecastQuestion } from './query';

/** An answer ready to be sent: the same question gets the same bytes until then. */
type Ready = { readonly body: Uint8Array<ArrayBuffer>; readonly until: Instant; readonly fresh: boolean };

const VOICE = { zone: 'UTC', units: METRIC_UNITS };
/** Fifteen kilobytes each. */
const MOST_READY = 300;

export type ForecastAnswers = (search: string, caller?: string) => Promise<Result<Response, Problem>>;

/** Answers queries, and keeps each answer as bytes for as long as it holds. */
export function forecastAnswers(deps: WeatherDeps): ForecastAnswers {
  const ready = createBoundedCache<Ready>(MOST_READY);
  return async (search, caller = deps.caller) => {
    const kept = ready.get(search);
    if (kept !== undefined && deps.now() < kept.until) return ok(respond(kept, deps.now()));
    const query = parseWith(forecastQuerySchema, parameters(search));
    if (!query.ok) return fail(fieldsProblem(query.reason, VOICE));
    const forecast = await getForecast(forecastQuestion(query.value, deps.now()), { ...deps, caller });
    if (!forecast.ok) return fail(weatherProblem(forecast.reason, VOICE));
    const made = prepare(forecast.value, { now: deps.now(), startsNow: query.value.from === undefined });
    ready.set(search, made);
    return ok(respond(made, deps.now()));
  };
}

function prepare(forecast: Forecast, { now, startsNow }: { now: Instant; startsNow: boolean }): Ready {
  const nextHour = (Math.floor(now / HOUR_MS) + 1) * HOUR_MS;
  return {
    body: new TextEncoder().encode(JSON.stringify(forecastToJson(forecast))),
    until: instant(startsNow ? Math.min(forecast.freshUntil, nextHour) : forecast.freshUntil),
    fresh: forecast.freshness === 'fresh',
  };
}

/** A minute in between spares the server; an old copy is to be asked about again at once. */
const HELD_S = 60;
/** A forecast of a few minutes ago, while a newer one is on its way to whoever holds it. */
const HELD_ON_S = 240;

function respond({ body, until, fresh }: Ready, now: Instant): Response {
  if (fresh) return sharedAnswer(body, { fresh: Math.min(HELD_S, (until - now) / 1000), stale: HELD_ON_S });
  return new Response(body, {
    headers: { 'content-type': 'application/json', 'cache-control': 'no-store' },
  });
}
