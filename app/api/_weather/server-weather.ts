import { clientOf, EVERYONE } from '@/app/api/_http/client-of';
import { trustedProxies } from '@/app/api/_http/rate-limit';
import { instant } from '@/lib/time/instant';
import { readSettings } from '@/lib/weather/environment';
import { TIMINGS } from '@/lib/weather/request/timings';
import { createWeatherMemory, type WeatherDeps, type WeatherMemory } from '@/lib/weather/weather-deps';

// The framework bundles each route by itself, so a constant here would be one memory per route. What must be shared by
// all of them (copies, breakers, who waits for a service) hangs on the process.
// The type of the global object knows only what the language puts there.
const shared = globalThis as typeof globalThis & { heavyAirWeather?: WeatherMemory };

/** What weather needs of the world, on a server: the network, the clock, chance, the environment and a memory. */
export const SERVER_WEATHER: WeatherDeps = {
  fetch: (input, init) => fetch(input, init),
  now: () => instant(Date.now()),
  random: () => Math.random(),
  timings: TIMINGS,
  settings: () => readSettings(process.env),
  caller: EVERYONE,
  memory: sharedMemory(),
};

function sharedMemory(): WeatherMemory {
  shared.heavyAirWeather ??= createWeatherMemory();
  return shared.heavyAirWeather;
}

/**
 * The same for one request, which waits in the line of its caller. Where no proxy is trusted the address is what the
 * framework saw or what the caller wrote: a made-up one gives a flood more lines, and so no more than it had without.
 */
export function weatherFor(request: Request): WeatherDeps {
  const proxies = Math.max(1, trustedProxies(process.env));
  return { ...SERVER_WEATHER, caller: clientOf(request.headers, proxies) };
}
