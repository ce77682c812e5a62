import { fail, type Result } from '@/lib/result/result';
import type { FetchProblem } from '@/lib/weather/problem';
import { createFairLine } from './fair-line';
import { inTime } from './in-time';

export type Turn = {
  /** Callers take turns. */
  readonly caller: string;
  /** Who waits longer than this leaves the line. */
  readonly deadline: AbortSignal;
  /** How many jobs may run at once. */
  readonly width: number;
  /** A job is given up after this, and its place is free again [ms]. */
  readonly longestMs: number;
  /** A welcome extra: it starts only where nobody else waits. */
  readonly extra: boolean;
};

type Busy = Extract<FetchProblem, { code: 'busy' }>;
type Late = Extract<FetchProblem, { code: 'timeout' }>;

/** Lets so many jobs run at a time and the others wait, fairly and not for ever; extras come last. */
export type Pool = {
  readonly run: <T, R>(turn: Turn, job: () => Promise<Result<T, R>>) => Promise<Result<T, R | Busy | Late>>;
};

type Waiting = { readonly start: () => void; readonly turnAway: () => void };

export function createPool(mostWaiting: number): Pool {
  const line = createFairLine<Waiting>(mostWaiting);
  const extras = createFairLine<Waiting>(mostWaiting);
  let running = 0;
  let widest = 1;
  const advance = (): void => {
    while (running < widest) {
      const next = line.next() ?? extras.next();
      if (next === undefined) return;
      next.start();
    }
  };
  return {
    run: (turn, job) =>
      new Promise((resolve, reject) => {
        const own = turn.extra ? extras : line;
        const turnAway = (): void => {
          turn.deadline.removeEventListener('abort', leave);
          resolve(fail({ code: 'busy' }));
        };
        const leave = (): void => {
          own.leave(waiting);
          turnAway();
        };
        const start = (): void => {
          turn.deadline.removeEventListener('abort', leave);
          running += 1;
          const late = (): Result<never, Late> => fail({ code: 'timeout' });
          // Started inside a promise, so that a job that throws at once frees its place too.
          const work = Promise.resolve().then(job);
          inTime<Awaited<typeof work> | Result<never, Late>>(work, { ms: turn.longestMs, late })
            .finally(() => {
              running -= 1;
              advance();
            })
            .then(resolve, reject);
        };
        const waiting: Waiting = { start, turnAway };
        if (turn.deadline.aborted) return turnAway();
        turn.deadline.addEventListener('abort', leave);
        widest = turn.width;
        own.join(turn.caller, waiting)?.turnAway();
        advance();
      }),
  };
}
