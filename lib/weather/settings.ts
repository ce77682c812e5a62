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

export type WeatherSettings = {
  /** null where the variable holds something that is not a web address. */
  readonly baseUrls: Readonly<Record<Host, string | null>>;
  /** An address the services can write to; null means those that insist on one are not asked. */
  readonly contact: string | null;
  /** Key for the paid hosts of Open-Meteo; null on the free ones. */
  readonly openMeteoKey: string | null;
  /** Which ensemble's mean and spread are asked for. The service renames its models now and then. */
  readonly ensembleModel: string;
};

type Environment = Readonly<Record<string, string | undefined>>;

/** Reads the settings from environment variables, at the time of the call. */
export function readSettings(environment: Environment): WeatherSettings {
  const base = (host: Host): string | null => readBaseUrl(environment[HOSTS[host].variable], HOSTS[host].url);
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
    openMeteoKey: readWord(environment.OPEN_METEO_API_KEY),
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

function readWord(text: string | undefined): string | null {
  const word = text?.trim() ?? '';
  return /^[\w-]{1,120}$/.test(word) ? word : null;
}
