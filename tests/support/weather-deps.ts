import { type Instant, instant } from '@/lib/time/instant';
import { TIMINGS, type Timings } from '@/lib/weather/request/timings';
import { readSettings } from '@/lib/weather/settings';
import { createWeatherMemory, type WeatherDeps } from '@/lib/weather/weather-deps';

/** A winter evening: 2027-01-16T22:10Z. */
export const EVENING = instant(Date.UTC(2027, 0, 16, 22, 10));

/** The same proportions as in earnest, some twenty times faster. */
export const SHORT_TIMINGS: Timings = {
  attemptMs: 200,
  totalMs: 450,
  hedgeMs: 100,
  staleGraceMs: 180,
  spreadGraceMs: 150,
  retryLeastMs: 5,
  retryMostMs: 40,
};

/** A clock that stands still until it is moved. */
export type HandClock = { readonly now: () => Instant; readonly forward: (ms: number) => void };

export function handClock(start: Instant = EVENING): HandClock {
  let at: number = start;
  return {
    now: () => instant(at),
    forward: (ms) => {
      at += ms;
    },
  };
}

type Given = Partial<Pick<WeatherDeps, 'fetch' | 'now' | 'random'>> & {
  readonly environment?: () => Readonly<Record<string, string>>;
  readonly timings?: Partial<Timings>;
};

/** Dependencies with an empty memory; in the hands of a test except for the network, which is real unless given. */
export function weatherDeps(given: Given = {}): WeatherDeps {
  return {
    fetch: given.fetch ?? ((input, init) => fetch(input, init)),
    now: given.now ?? (() => EVENING),
    random: given.random ?? (() => 0.5),
    timings: { ...TIMINGS, ...given.timings },
    settings: () => readSettings(given.environment?.() ?? { WEATHER_CONTACT: 'tests@example.org' }),
    memory: createWeatherMemory(),
  };
}
