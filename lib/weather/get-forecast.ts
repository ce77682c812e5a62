import { fail, ok, type Result } from '@/lib/result/result';
import { type Instant, instant } from '@/lib/time/instant';
import type { Metre } from '@/lib/units/quantity';
import { siteKey } from './copy';
import type { Forecast } from './forecast';
import type { Coordinates, Site } from './place';
import type { WeatherProblem } from './problem';
import { readSite } from './read-site';
import { refreshForecast } from './refresh-forecast';
import type { WeatherDeps } from './weather-deps';
import { cutWindow } from './window';

export type ForecastQuestion = Coordinates & {
  /** null: the service's own height for the place. */
  readonly elevation: Metre | null;
  readonly from: Instant;
  /** How many hours from there. */
  readonly hours: number;
};

/**
 * The hours at a place: from memory while fresh, else from the first service that answers, else the last good copy,
 * labelled with its age. Many who ask for the same at once share one request.
 */
export async function getForecast(
  question: ForecastQuestion,
  deps: WeatherDeps,
): Promise<Result<Forecast, WeatherProblem>> {
  const site = readSite(question);
  if (!site.ok) return site;
  const key = siteKey(site.value);
  const kept = deps.memory.forecasts.get(key);
  const whole =
    kept !== undefined && deps.now() < kept.freshUntil
      ? kept.value
      : await deps.memory.forecastFlights.run(key, () => renew(key, site.value, deps));
  if (!whole.ok) return whole;
  const forecast = cutWindow(whole.value, question);
  return forecast.hours.length > 0 ? ok(forecast) : fail(outside(whole.value));
}

async function renew(key: string, site: Site, deps: WeatherDeps): Promise<Result<Forecast, WeatherProblem>> {
  const renewed = await refreshForecast(site, deps);
  deps.memory.forecasts.set(key, renewed);
  return renewed.value;
}

function outside(forecast: Forecast): WeatherProblem {
  const [first, last] = [forecast.hours[0], forecast.hours.at(-1)];
  // A forecast has at least one hour, or it would have been refused.
  if (first === undefined || last === undefined) throw new RangeError('a forecast without hours');
  return { code: 'outside-forecast', hoursStart: instant(first.at), hoursEnd: instant(last.at) };
}
