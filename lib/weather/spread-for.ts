import { HOUR_MS, instant, MINUTE_MS } from '@/lib/time/instant';
import { siteKey } from './copy';
import { requestSpread } from './open-meteo/request';
import type { TemperatureSpread } from './open-meteo/spread';
import type { Site } from './place';
import type { WeatherDeps } from './weather-deps';

/** Ensembles run every six hours. */
const SPREAD_FRESH_MS = 3 * HOUR_MS;
/** A spread that could not be had is not asked for again at once. */
const FAILED_MS = 15 * MINUTE_MS;

export type SpreadAnswer = {
  readonly spread: TemperatureSpread | null;
  /** Still on its way: ask again in a minute. */
  readonly pending: boolean;
};

/** The ensemble's spread at a site. It is a welcome extra, so nobody waits long for it and nothing fails without it. */
export async function spreadFor(site: Site, deadline: AbortSignal, deps: WeatherDeps): Promise<SpreadAnswer> {
  const key = siteKey(site);
  const kept = deps.memory.spreads.get(key);
  if (kept !== undefined && deps.now() < kept.freshUntil) return { spread: kept.value, pending: false };
  const arriving = requestSpread(site, deadline, deps).then((answer): SpreadAnswer => {
    const spread: TemperatureSpread = answer.ok ? answer.value : new Map();
    const freshUntil = instant(deps.now() + (answer.ok ? SPREAD_FRESH_MS : FAILED_MS));
    deps.memory.spreads.set(key, { value: spread, freshUntil });
    return { spread, pending: false };
  });
  let timer: ReturnType<typeof setTimeout> | undefined;
  const patience = new Promise<SpreadAnswer>((resolve) => {
    // Yesterday's spread is better than none.
    timer = setTimeout(
      () => resolve({ spread: kept?.value ?? null, pending: true }),
      deps.timings.spreadGraceMs,
    );
  });
  return Promise.race([arriving, patience]).finally(() => clearTimeout(timer));
}

/** The spread in memory, however old: what goes with a last good copy. */
export function rememberedSpread(site: Site, deps: WeatherDeps): SpreadAnswer {
  return { spread: deps.memory.spreads.get(siteKey(site))?.value ?? null, pending: false };
}
