import { callerOf } from '@/app/api/_http/caller-of';
import { LIVE } from '@/app/api/_planning/jobs';
import { planApart } from '@/app/api/_planning/plan-apart';
import { SERVER_WEATHER, weatherFor } from '@/app/api/_weather/server-weather';
import { getForecast } from '@/lib/weather/get-forecast';
import type { LiveDeps } from './live-night';

/** What a live answer to one request needs of the world. */
export function liveFor(request: Request): LiveDeps {
  return {
    fetchForecast: (question) => getForecast(question, weatherFor(request)),
    now: SERVER_WEATHER.now,
    plan: (...input) => planApart(LIVE, { caller: callerOf(request), input }),
  };
}
