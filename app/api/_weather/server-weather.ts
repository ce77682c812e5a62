import { callerOf } from '@/app/api/_http/caller-of';
import { EVERYONE } from '@/app/api/_http/client-of';
import { servedProcess } from '@/app/api/_serve/served-process';
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
  onFailure: (host, code) => servedProcess()?.upstreamFailed(host, code),
  memory: sharedMemory(),
};

function sharedMemory(): WeatherMemory {
  shared.heavyAirWeather ??= createWeatherMemory();
  return shared.heavyAirWeather;
}

/** The same for one request, which waits in the line of its caller. */
export function weatherFor(request: Request): WeatherDeps {
  return { ...SERVER_WEATHER, caller: callerOf(request) };
}
