type Environment = Readonly<Record<string, string | undefined>>;

export type ServeSettings = {
  /** The address listened on; 127.0.0.1 is heard by this computer alone. */
  readonly host: string;
  readonly port: number;
  /** How long browsers shall insist on https [s]; 0: they are not asked to. */
  readonly httpsOnlySeconds: number;
  /** Whether that goes for every name below this one too. */
  readonly httpsOnlyBelow: boolean;
  /** Where the figures are told; null: nowhere. */
  readonly metricsPort: number | null;
  /** One line of log for each request, not only for what went wrong. */
  readonly logsRequests: boolean;
  /** How many requests are planned at once; null: as many as suit this computer. */
  readonly planningThreads: number | null;
  /** Own proxies in front. */
  readonly proxies: number;
};

const LOOPBACK = '127.0.0.1';
const MOST_PORT = 65_535;
const MOST_THREADS = 64;

/** A setting that cannot be meant ends the start with words: a server on another port than asked for helps nobody. */
export class SettingProblem extends Error {}

function readWhole(environment: Environment, name: string, most: number): number | null {
  const text = environment[name]?.trim() ?? '';
  if (text === '') return null;
  if (!/^\d{1,10}$/.test(text) || Number(text) > most)
    throw new SettingProblem(`${name} must be a whole number from 0 to ${most}.`);
  return Number(text);
}

const isOn = (text: string | undefined): boolean => /^(1|true|yes|on)$/i.test(text?.trim() ?? '');

/** Reads what says how to serve. Throws SettingProblem. */
export function readServeSettings(environment: Environment): ServeSettings {
  const threads = readWhole(environment, 'PLANNING_THREADS', MOST_THREADS);
  return {
    host: environment.HOST?.trim() || LOOPBACK,
    port: readWhole(environment, 'PORT', MOST_PORT) ?? 3000,
    httpsOnlySeconds: readWhole(environment, 'HSTS_SECONDS', 2 ** 31) ?? 0,
    httpsOnlyBelow: isOn(environment.HSTS_SUBDOMAINS),
    metricsPort: readWhole(environment, 'METRICS_PORT', MOST_PORT),
    logsRequests: isOn(environment.LOG_REQUESTS),
    planningThreads: threads === 0 ? null : threads,
    proxies: readWhole(environment, 'TRUSTED_PROXIES', 16) ?? 0,
  };
}
