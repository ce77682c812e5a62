import { availableParallelism } from 'node:os';
import { MOST_WORK } from '@/lib/plan/judgement';
import { fail, ok, type Result } from '@/lib/result/result';
import { createCostLine } from './cost-line';
import { createCrew, type Errand } from './crew';
import type { Job } from './jobs';

/** What may wait for one caller, and for all: so many of the largest requests there are, each about a second. Judgement. */
const MOST_OF_ONE = 16 * MOST_WORK;
const MOST_OF_ALL = 64 * MOST_WORK;
/** Nobody waits longer for an answer [ms]. */
const LONGEST_WAIT_MS = 60_000;
/** Seconds a unit of work takes at worst, until it has been seen. */
const SECONDS_A_UNIT = 1.6e-8;
/** How much the last one counts for what a unit takes. */
const NEWEST = 0.1;

export type Turn = { readonly caller: string; readonly cost: number };
/** Not now: there is too much to do. */
export type TurnedAway = { readonly because: 'caller' | 'everybody'; readonly seconds: number };

/** Threads that plan, so that whoever answers requests does not stand still meanwhile. */
export type Threads = {
  readonly run: <I extends readonly unknown[], O>(
    job: Job<I, O>,
    input: I,
    turn: Turn,
  ) => Promise<Result<O, TurnedAway>>;
  readonly waiting: () => number;
  readonly close: () => Promise<void>;
};

export type ThreadOptions = {
  /** The bundled program of a thread. */
  readonly file: URL | string;
  /** null: one less than there are processors, so that one is left for answering. */
  readonly count: number | null;
  readonly planned?: (outcome: 'done' | 'refused' | 'failed', waited: number, worked: number) => void;
  /** Seconds of a clock that only goes forward. */
  readonly seconds: () => number;
};

type Waiting = {
  readonly errand: Errand;
  readonly start: () => void;
  readonly turnAway: (because: TurnedAway['because']) => void;
};

export function createThreads({ file, count, planned = () => {}, seconds }: ThreadOptions): Threads {
  const most = count ?? Math.max(1, availableParallelism() - 1);
  const line = createCostLine<Waiting>({ ofOne: MOST_OF_ONE, ofAll: MOST_OF_ALL });
  let secondsAUnit = SECONDS_A_UNIT;
  const advance = (): void => {
    while (crew.isFree()) {
      const next = line.next();
      if (next === undefined) return;
      next.start();
      crew.send(next.errand);
    }
  };
  const crew = createCrew({ file, most, seconds, onFree: advance });
  const waitSeconds = (): number => Math.max(1, Math.ceil((line.cost() * secondsAUnit) / most));

  const run = <I extends readonly unknown[], O>({ name }: Job<I, O>, input: I, { caller, cost }: Turn) =>
    new Promise<Result<O, TurnedAway>>((resolve, reject) => {
      const since = seconds();
      let waited = 0;
      const leave = (): void => {
        clearTimeout(tooLong);
        waited = seconds() - since;
      };
      const turnAway = (because: TurnedAway['because']): void => {
        leave();
        planned('refused', waited, 0);
        resolve(fail({ because, seconds: waitSeconds() }));
      };
      const errand: Errand = {
        task: { name, input },
        // The thread answers a job with what that job gives.
        done: (output) => resolve(ok(output as O)),
        failed: reject,
        over: (outcome, worked) => {
          planned(outcome, waited, worked);
          if (outcome === 'done') secondsAUnit += NEWEST * (worked / cost - secondsAUnit);
        },
      };
      const one: Waiting = { errand, start: leave, turnAway };
      const tooLong = setTimeout(() => {
        line.leave(one);
        turnAway('everybody');
      }, LONGEST_WAIT_MS);
      for (const away of line.join(caller, one, cost)) away.turnAway('caller');
      advance();
    });
  return { run, waiting: line.length, close: crew.close };
}
