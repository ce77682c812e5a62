import type { Log } from './log';

/** One request that is over. */
export type Served = {
  /** The route's name, never the address that was asked for. */
  readonly route: string;
  readonly method: string;
  readonly status: number;
  readonly seconds: number;
};

/** One planning that is over. */
export type Planned = {
  readonly outcome: 'done' | 'refused' | 'failed';
  readonly waitedSeconds: number;
  readonly workedSeconds: number;
};

/** What is told of a running server. */
export type Watch = {
  readonly served: (served: Served) => void;
  readonly upstreamFailed: (host: string, code: string) => void;
  readonly planned: (planned: Planned) => void;
};

/** Tells the log what went wrong, with how often it has; with `all` every request too. */
export function logWatch(log: Log, { all }: { readonly all: boolean }): Watch {
  const failures = new Map<string, number>();
  const count = (key: string): number => {
    const times = (failures.get(key) ?? 0) + 1;
    failures.set(key, times);
    return times;
  };
  return {
    served: ({ route, method, status, seconds }) => {
      if (!all && status < 500) return;
      const ms = Math.round(seconds * 1000);
      log(status < 500 ? 'info' : 'error', 'request', { route, method, status, ms });
    },
    upstreamFailed: (host, code) =>
      log('warn', 'weather-service-failed', { host, code, times: count(`${host} ${code}`) }),
    planned: ({ outcome, waitedSeconds }) => {
      if (outcome === 'done') return;
      const waitedMs = Math.round(waitedSeconds * 1000);
      log('warn', 'planning', { outcome, waitedMs, times: count(outcome) });
    },
  };
}

export function watchAll(watches: readonly Watch[]): Watch {
  return {
    served: (served) => {
      for (const watch of watches) watch.served(served);
    },
    upstreamFailed: (host, code) => {
      for (const watch of watches) watch.upstreamFailed(host, code);
    },
    planned: (planned) => {
      for (const watch of watches) watch.planned(planned);
    },
  };
}
