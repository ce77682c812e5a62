/** The hosts that are asked. Each is a constant that an environment variable may replace. */
const HOSTS = {
  openMeteo: { variable: 'OPEN_METEO_BASE_URL', url: 'https://api.open-meteo.com' },
  openMeteoEnsemble: { variable: 'OPEN_METEO_ENSEMBLE_BASE_URL', url: 'https://ensemble-api.open-meteo.com' },
  openMeteoGeocoding: {
    variable: 'OPEN_METEO_GEOCODING_BASE_URL',
    url: 'https://geocoding-api.open-meteo.com',
  },
  openMeteoArchive: { variable: 'OPEN_METEO_ARCHIVE_BASE_URL', url: 'https://archive-api.open-meteo.com' },
  metNorway: { variable: 'METNO_BASE_URL', url: 'https://api.met.no' },
  weatherGov: { variable: 'NWS_BASE_URL', url: 'https://api.weather.gov' },
} as const;

export type Host = keyof typeof HOSTS;

/** Open-Meteo counts requests to all its hosts together. */
export type Service = 'openMeteo' | 'metNorway' | 'weatherGov';

export type WeatherSettings = {
  /** null where the variable holds something that is not a web address. */
  readonly baseUrls: Readonly<Record<Host, string | null>>;
  /** An address the services can write to; null means those that insist on one are not asked. */
  readonly contact: string | null;
  /** Key for the paid hosts of Open-Meteo; null on the free ones. */
  readonly openMeteoKey: string | null;
  /** How many requests to a service may be under way at once. */
  readonly concurrency: Readonly<Record<Service, number>>;
  /** Which ensemble's mean and spread are asked for. The service renames its models now and then. */
  readonly ensembleModel: string;
};

type Environment = Readonly<Record<string, string | undefined>>;

/** The free hosts of Open-Meteo serve one request at a time per address (its RateLimiter.swift). */
const FREE_AT_ONCE = 1;
/** Its paid ones name no limit. Judgement. */
const PAID_AT_ONCE = 8;
/** MET Norway wants at most 20 requests a second, which four at a time are where each takes a fifth of a second. Judgement. */
const OTHERS_AT_ONCE = 4;
const MOST_AT_ONCE = 64;

/** Reads the settings from environment variables, at the time of the call. */
export function readSettings(environment: Environment): WeatherSettings {
  const base = (host: Host): string | null => readBaseUrl(environment[HOSTS[host].variable], HOSTS[host].url);
  const openMeteoKey = readWord(environment.OPEN_METEO_API_KEY);
  return {
    baseUrls: {
      openMeteo: base('openMeteo'),
      openMeteoEnsemble: base('openMeteoEnsemble'),
      openMeteoGeocoding: base('openMeteoGeocoding'),
      openMeteoArchive: base('openMeteoArchive'),
      metNorway: base('metNorway'),
      weatherGov: base('weatherGov'),
    },
    contact: readContact(environment.WEATHER_CONTACT),
    openMeteoKey,
    concurrency: {
      openMeteo:
        readCount(environment.OPEN_METEO_CONCURRENCY) ??
        (openMeteoKey === null ? FREE_AT_ONCE : PAID_AT_ONCE),
      metNorway: OTHERS_AT_ONCE,
      weatherGov: OTHERS_AT_ONCE,
    },
    ensembleModel: readWord(environment.OPEN_METEO_ENSEMBLE_MODEL) ?? 'ncep_gefs_ensemble_mean_seamless',
  };
}

function readBaseUrl(text: string | undefined, otherwise: string): string | null {
  if (text === undefined || text.trim() === '') return otherwise;
  if (!URL.canParse(text.trim())) return null;
  const url = new URL(text.trim());
  if (!['http:', 'https:'].includes(url.protocol)) return null;
  return `${url.origin}${url.pathname.replace(/\/+$/, '')}`;
}

/** A mail or web address; anything that could break out of a header is refused. */
function readContact(text: string | undefined): string | null {
  const contact = text?.trim() ?? '';
  return /^[\x21-\x7e]{3,120}$/.test(contact) && /[@.]/.test(contact) ? contact : null;
}

function readCount(text: string | undefined): number | null {
  const count = /^\d{1,4}$/.test(text?.trim() ?? '') ? Number(text) : 0;
  return count < 1 ? null : Math.min(count, MOST_AT_ONCE);
}

function readWord(text: string | undefined): string | null {
  const word = text?.trim() ?? '';
  return /^[\w-]{1,120}$/.test(word) ? word : null;
}
