import type { Result } from '@/lib/result/result';
import type { Metre } from '@/lib/units/quantity';
import type { Copy } from './copy';
import type { Forecast } from './forecast';
import type { Kept } from './kept';
import { createLookup, type Lookup } from './lookup';
import { createSiteBatches, type SiteBatches } from './open-meteo/site-batches';
import type { TemperatureSpread } from './open-meteo/spread';
import type { PastAir, PastSeason } from './past';
import type { Place } from './place';
import type { WeatherProblem } from './problem';
import type { RequestDeps, RequestMemory } from './request/ask';
import { type BoundedCache, createBoundedCache } from './request/bounded-cache';
import { createPool } from './request/pool';
import { createSingleFlight, type SingleFlight } from './request/single-flight';
import type { Observed } from './stations/observed';
import type { Station } from './weather-gov/adapt-observation';
import type { WeatherGovPoint } from './weather-gov/schema';

/** What is remembered between questions: bounded, in this process only, safe to lose. */
export type WeatherMemory = RequestMemory & {
  /** Last good answer of each service, by service and site. */
  readonly copies: BoundedCache<Copy>;
  /** Whole forecasts put together from them, and failures that need not be repeated yet, by site. */
  readonly forecasts: BoundedCache<Kept<Result<Forecast, WeatherProblem>>>;
  readonly forecastFlights: SingleFlight<Result<Forecast, WeatherProblem>>;
  /** Sites that wait for room in a request to Open-Meteo. */
  readonly siteBatches: SiteBatches;
  readonly spreads: BoundedCache<Kept<TemperatureSpread>>;
  readonly gridCells: BoundedCache<Kept<WeatherGovPoint>>;
  /** The stations of a grid cell, by its path. */
  readonly stations: BoundedCache<Kept<readonly Station[]>>;
  readonly observations: Lookup<Observed>;
  readonly places: Lookup<readonly Place[]>;
  readonly elevations: Lookup<readonly Metre[]>;
  readonly seasons: Lookup<PastSeason>;
  readonly pastAir: Lookup<PastAir>;
};

export type WeatherDeps = RequestDeps & {
  readonly memory: WeatherMemory;
};

/** A site's ten days of hours take about 50 kB. */
const MOST_SITES = 300;
const MOST_LOOKUPS = 500;
/** More than a service can answer in the time anybody waits. */
const MOST_WAITING = 500;

export function createWeatherMemory(): WeatherMemory {
  return {
    breakers: new Map(),
    pools: {
      openMeteo: createPool(MOST_WAITING),
      metNorway: createPool(MOST_WAITING),
      weatherGov: createPool(MOST_WAITING),
    },
    copies: createBoundedCache(MOST_SITES),
    forecasts: createBoundedCache(MOST_SITES),
    forecastFlights: createSingleFlight(),
    siteBatches: createSiteBatches(MOST_WAITING),
    spreads: createBoundedCache(MOST_SITES),
    gridCells: createBoundedCache(MOST_LOOKUPS),
    stations: createBoundedCache(MOST_LOOKUPS),
    observations: createLookup(MOST_LOOKUPS),
    places: createLookup(MOST_LOOKUPS),
    elevations: createLookup(MOST_LOOKUPS),
    seasons: createLookup(MOST_SITES),
    pastAir: createLookup(MOST_LOOKUPS),
  };
}
