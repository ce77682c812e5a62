import { Worker } from 'node:worker_threads';
import type { ThreadReply, ThreadTask } from './thread';

/** The largest request takes a second; one that takes this long will not end [ms]. */
const LONGEST_WORK_MS = 30_000;
/** The largest request takes some 200 MB. */
const MEMORY_MB = 768;

/** A piece of work for one thread. */
export type Errand = {
  readonly task: ThreadTask;
  readonly done: (output: unknown) => void;
  readonly failed: (fault: Error) => void;
  /** How it went and what it took [s], before either of the two above. */
  readonly over: (outcome: 'done' | 'failed', seconds: number) => void;
};

type Working = { readonly errand: Errand; readonly began: number; readonly tooLong: NodeJS.Timeout };
type Thread = { readonly worker: Worker; working: Working | null };

/** Threads that come when they are first needed and are replaced when they end. */
export type Crew = {
  readonly isFree: () => boolean;
  /** Only while one is free. */
  readonly send: (errand: Errand) => void;
  readonly close: () => Promise<void>;
};

export type CrewOptions = {
  /** The bundled program of a thread. */
  readonly file: URL | string;
  readonly most: number;
  /** Seconds of a clock that only goes forward. */
  readonly seconds: () => number;
  /** One may be free by now. */
  readonly onFree: () => void;
};

/** A fault in a thread, with the places of that thread's code. */
class PlanningFault extends Error {
  override readonly name = 'PlanningFault';
  constructor(kind: string, stack: string) {
    super(kind);
    if (stack !== '') this.stack = stack;
  }
}

export function createCrew({ file, most, seconds, onFree }: CrewOptions): Crew {
  const threads = new Set<Thread>();
  let closed = false;
  /** Takes its errand from a thread, and tells how it went. */
  const finish = (thread: Thread, outcome: 'done' | 'failed'): Errand | null => {
    if (thread.working === null) return null;
    const { errand, began, tooLong } = thread.working;
    thread.working = null;
    clearTimeout(tooLong);
    errand.over(outcome, seconds() - began);
    return errand;
  };
  /** A thread that ended, or will not: the next errand gets a new one. */
  const lose = (thread: Thread, fault: Error): void => {
    threads.delete(thread);
    finish(thread, 'failed')?.failed(fault);
    void thread.worker.terminate();
    onFree();
  };
  const open = (): Thread => {
    const worker = new Worker(file, { resourceLimits: { maxOldGenerationSizeMb: MEMORY_MB } });
    const thread: Thread = { worker, working: null };
    threads.add(thread);
    worker.on('error', (fault: Error) => lose(thread, fault));
    worker.on('exit', () => lose(thread, new PlanningFault('ended', '')));
    worker.on('message', (reply: ThreadReply) => {
      const errand = finish(thread, reply.done ? 'done' : 'failed');
      if (reply.done) errand?.done(reply.output);
      else errand?.failed(new PlanningFault(reply.fault, reply.stack));
      onFree();
    });
    return thread;
  };
  const idle = (): Thread | undefined => [...threads].find(({ working }) => working === null);
  return {
    isFree: () => !closed && (threads.size < most || idle() !== undefined),
    send: (errand) => {
      const thread = idle() ?? open();
      const tooLong = setTimeout(() => lose(thread, new PlanningFault('took too long', '')), LONGEST_WORK_MS);
      thread.working = { errand, began: seconds(), tooLong };
      thread.worker.postMessage(errand.task);
    },
    close: async () => {
      closed = true;
      await Promise.all([...threads].map(({ worker }) => worker.terminate()));
    },
  };
}
