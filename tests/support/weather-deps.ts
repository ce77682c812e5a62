import { type Instant, instant } from '@/lib/time/instant';
import { readSettings } from '@/lib/weather/environment';
import { TIMINGS, type Timings } from '@/lib/weather/request/timings';
import { createWeatherMemory, type WeatherDeps } from '@/lib/weather/weather-deps';

/** A winter evening: 2027-01-16T22:10Z. */
export const EVENING = instant(Date.UTC(2027, 0, 16, 22, 10));

/** Time enough for a busy machine to answer, and none lost where nobody will: a silent service gets company at once. */
export const BRISK_TIMINGS: Partial<Timings> = {
  attemptMs: 3000,
  totalMs: 4000,
  hedgeMs: 2000,
  staleGraceMs: 3000,
  spreadGraceMs: 2000,
  retryLeastMs: 2,
  retryMostMs: 20,
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

type Given = Partial<Pick<WeatherDeps, 'fetch' | 'now' | 'random' | 'caller'>> & {
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
    caller: given.caller ?? 'someone',
    memory: createWeatherMemory(),
  };
}
