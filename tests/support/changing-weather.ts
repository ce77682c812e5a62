import { HOUR_MS, type Instant } from '@/lib/time/instant';

/**
 * A weather service in this process whose forecast changes every full hour: warmer or colder by so many kelvin than
 * the first one said. null: no service answers in that hour.
 */
export type ChangingWeather = {
  readonly fetch: typeof fetch;
  /** Which issue is told at a moment; null where none is. */
  readonly issueAt: (at: Instant) => number | null;
  readonly setNow: (at: Instant) => void;
};

type Script = {
  readonly from: Instant;
  /** °C at `from`, and how much colder each hour is than the one before. */
  readonly startC: number;
  readonly fallPerHour: number;
  readonly shiftByHour: readonly (number | null)[];
};

export function changingWeather({ from, startC, fallPerHour, shiftByHour }: Script): ChangingWeather {
  let now = from;
  const hourOf = (at: Instant) =>
    Math.min(Math.max(Math.floor((at - from) / HOUR_MS), 0), shiftByHour.length - 1);
  const issueAt = (at: Instant) => (shiftByHour[hourOf(at)] === null ? null : hourOf(at));
  const answer = (shift: number) => {
    const first = Math.floor(now / HOUR_MS) * HOUR_MS - 24 * HOUR_MS;
    const times = Array.from({ length: 72 }, (_, i) => first + i * HOUR_MS);
    // It stops falling after 18 hours: no place on earth is colder than the app believes.
    const fallen = (at: number) => fallPerHour * Math.min((at - from) / HOUR_MS, 18);
    const temperature = times.map((at) => Math.round((startC - fallen(at) + shift) * 10) / 10);
    return {
      latitude: 46.1,
      longitude: -89.2,
      utc_offset_seconds: 0,
      timezone: 'GMT',
      elevation: 250,
      hourly_units: {
        time: 'unixtime',
        temperature_2m: '°C',
        relative_humidity_2m: '%',
        dew_point_2m: '°C',
        surface_pressure: 'hPa',
        pressure_msl: 'hPa',
        cloud_cover: '%',
      },
      hourly: {
        time: times.map((at) => at / 1000),
        temperature_2m: temperature,
        relative_humidity_2m: times.map(() => 80),
        dew_point_2m: temperature.map((celsius) => Math.round((celsius - 2.6) * 10) / 10),
        surface_pressure: times.map(() => 985.5),
        pressure_msl: times.map(() => 1017.1),
        // A sky that was told: under none a model's night is taken for one that may be clear.
        cloud_cover: times.map(() => 100),
      },
    };
  };
  const respond = async (input: string | URL | Request): Promise<Response> => {
    const issue = issueAt(now);
    const host = new URL(input instanceof Request ? input.url : input).hostname;
    if (issue === null || host !== 'hours.test') return new Response('{}', { status: 503 });
    return Response.json(answer(shiftByHour[issue] ?? 0));
  };
  return {
    fetch: respond,
    issueAt,
    setNow: (at) => {
      now = at;
    },
  };
}

/** Leads the app to the service above, and to no other. */
export const CHANGING_WEATHER_ENVIRONMENT = {
  OPEN_METEO_BASE_URL: 'https://hours.test',
  OPEN_METEO_ENSEMBLE_BASE_URL: 'nowhere',
  METNO_BASE_URL: 'nowhere',
  NWS_BASE_URL: 'nowhere',
} as const;
