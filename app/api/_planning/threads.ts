import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { MOST_WORK } from '@/lib/plan/judgement';
import { fail, ok, type Result } from '@/lib/result/result';
import { createCostLine } from './cost-line';
import type { Job } from './jobs';
import type { ThreadReply, ThreadTask } from './thread';

/** What may wait for one caller, and for all: so many of the largest requests there are, each about a second. Judgement. */
const MOST_OF_ONE = 16 * MOST_WORK;
const MOST_OF_ALL = 64 * MOST_WORK;
/** Nobody waits longer for an answer [ms]. */
const LONGEST_WAIT_MS = 30_000;
/** The largest request takes a second; one that takes this long will not end [ms]. */
const LONGEST_WORK_MS = 30_000;
/** The largest request takes some 200 MB. */
const MEMORY_MB = 768;
/** Seconds a unit of work takes at worst, until it has been seen. */
const SECONDS_A_UNIT = 1.6e-8;

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
  readonly task: ThreadTask;
  readonly since: number;
  readonly cost: number;
  readonly turnAway: (because: TurnedAway['because']) => void;
  readonly start: () => void;
  readonly done: (output: unknown) => void;
  readonly failed: (fault: Error) => void;
};

/** A fault in a thread, with the places of that thread's code. */
class PlanningFault extends Error {
  override readonly name = 'PlanningFault';
  constructor(kind: string, stack: string) {
    super(kind);
    if (stack !== '') this.stack = stack;
  }
}

type Working = { readonly one: Waiting; readonly began: number; readonly tooLong: NodeJS.Timeout };
type Thread = { readonly worker: Worker; working: Working | null };

export function createThreads({ file, count, planned = () => {}, seconds }: ThreadOptions): Threads {
  const most = count ?? Math.max(1, availableParallelism() - 1);
  const line = createCostLine<Waiting>({ ofOne: MOST_OF_ONE, ofAll: MOST_OF_ALL });
  const threads = new Set<Thread>();
  let secondsAUnit = SECONDS_A_UNIT;
  let closed = false;

  const advance = (): void => {
    while (!closed && line.length() > 0) {
      const idle = [...threads].find(({ working }) => working === null);
      if (idle === undefined && threads.size >= most) return;
      const next = line.next();
      if (next !== undefined) begin(idle ?? open(), next);
    }
  };
  const begin = (thread: Thread, one: Waiting): void => {
    one.start();
    const tooLong = setTimeout(() => lose(thread, new PlanningFault('took too long', '')), LONGEST_WORK_MS);
    thread.working = { one, began: seconds(), tooLong };
    thread.worker.postMessage(one.task);
  };
  /** Takes its work from a thread, and tells how it went. */
  const finish = (thread: Thread, outcome: 'done' | 'failed'): Waiting | null => {
    if (thread.working === null) return null;
    const { one, began, tooLong } = thread.working;
    thread.working = null;
    clearTimeout(tooLong);
    const took = seconds() - began;
    planned(outcome, began - one.since, took);
    if (outcome === 'done') secondsAUnit += 0.1 * (took / one.cost - secondsAUnit);
    return one;
  };
  /** A thread that ended, or will not: the next one gets a new thread. */
  const lose = (thread: Thread, fault: Error): void => {
    threads.delete(thread);
    finish(thread, 'failed')?.failed(fault);
    void thread.worker.terminate();
    advance();
  };
  const open = (): Thread => {
    const worker = new Worker(file, { resourceLimits: { maxOldGenerationSizeMb: MEMORY_MB } });
    const thread: Thread = { worker, working: null };
    threads.add(thread);
    worker.on('error', (fault: Error) => lose(thread, fault));
    worker.on('exit', () => lose(thread, new PlanningFault('ended', '')));
    worker.on('message', (reply: ThreadReply) => {
      const one = finish(thread, reply.done ? 'done' : 'failed');
      if (reply.done) one?.done(reply.output);
      else one?.failed(new PlanningFault(reply.fault, reply.stack));
      advance();
    });
    return thread;
  };

  return {
    run: <I extends readonly unknown[], O>({ name }: Job<I, O>, input: I, { caller, cost }: Turn) =>
      new Promise<Result<O, TurnedAway>>((resolve, reject) => {
        const since = seconds();
        const turnAway = (because: TurnedAway['because']): void => {
          clearTimeout(tooLong);
          planned('refused', seconds() - since, 0);
          resolve(fail({ because, seconds: Math.max(1, Math.ceil((line.cost() * secondsAUnit) / most)) }));
        };
        const one: Waiting = {
          task: { name, input },
          since,
          cost,
          turnAway,
          start: () => clearTimeout(tooLong),
          // The thread answers a job with what that job gives.
          done: (output) => resolve(ok(output as O)),
          failed: reject,
        };
        const tooLong = setTimeout(() => {
          line.leave(one);
          turnAway('everybody');
        }, LONGEST_WAIT_MS);
        for (const away of line.join(caller, one, cost)) away.turnAway('caller');
        advance();
      }),
    waiting: line.length,
    close: async () => {
      closed = true;
      await Promise.all([...threads].map(({ worker }) => worker.terminate()));
    },
  };
}
