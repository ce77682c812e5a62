import { instant } from '@/lib/time/instant';
import { TIMINGS } from '@/lib/weather/request/timings';
import { readSettings } from '@/lib/weather/settings';
import { createWeatherMemory, type WeatherDeps } from '@/lib/weather/weather-deps';

/** One memory for all routes of this process, so that they share copies, breakers and flights. */
const memory = createWeatherMemory();

/** What weather needs of the world, on a server: the network, the clock, chance and the environment. */
export const SERVER_WEATHER: WeatherDeps = {
  fetch: (input, init) => fetch(input, init),
  now: () => instant(Date.now()),
  random: () => Math.random(),
  timings: TIMINGS,
  settings: () => readSettings(process.env),
  memory,
};
