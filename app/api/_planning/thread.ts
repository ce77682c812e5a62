// The program of a planning thread: does one job after the other. The build bundles it beside the server.
import { getPriority, platform, setPriority } from 'node:os';
import { parentPort } from 'node:worker_threads';
import { ANSWERS, BOARD, type Job, LIVE } from './jobs';

export type ThreadTask = { readonly name: string; readonly input: readonly unknown[] };
export type ThreadReply =
  | { readonly done: true; readonly output: unknown }
  | { readonly done: false; readonly fault: string; readonly stack: string };

/** What goes into a job is what the same job's door took on the other side. */
const JOBS = [ANSWERS, LIVE, BOARD] as readonly Job<never[], unknown>[];

function perform({ name, input }: ThreadTask): ThreadReply {
  try {
    const job = JOBS.find((each) => each.name === name);
    if (job === undefined) throw new RangeError('no such job');
    return { done: true, output: job.work(...(input as never[])) };
  } catch (thrown) {
    const { name: fault, stack = '' } = thrown instanceof Error ? thrown : new Error('thrown');
    return { done: false, fault, stack };
  }
}

/** Whoever answers requests goes first where there is more to do than processors. Judgement. */
const STANDS_BACK = 5;
const MOST_NICENESS = 19;
// On Linux this is the thread's own (setpriority(2), from memory); elsewhere the whole process would stand back.
if (platform() === 'linux') setPriority(Math.min(MOST_NICENESS, getPriority() + STANDS_BACK));

parentPort?.on('message', (task: ThreadTask) => parentPort?.postMessage(perform(task)));
