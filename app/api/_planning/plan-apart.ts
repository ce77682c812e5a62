import type { Problem } from '@/app/api/_http/problem';
import { servedProcess } from '@/app/api/_serve/served-process';
import { fail, ok, type Result } from '@/lib/result/result';
import type { Job } from './jobs';
import type { TurnedAway } from './threads';

/** Callers get like shares of the threads; what the server plans by itself is one more of them. */
type Asked<I> = { readonly caller: string; readonly input: I };

/** Plans in a thread where the server has some, else in place; or says when to come back. */
export async function planApart<I extends readonly unknown[], O>(
  job: Job<I, O>,
  { caller, input }: Asked<I>,
): Promise<Result<O, Problem>> {
  const threads = servedProcess()?.planning;
  if (threads === undefined) return ok(job.work(...input));
  const planned = await threads.run(job, input, { caller, cost: job.cost(...input) });
  return planned.ok ? planned : fail(turnedAway(planned.reason));
}

function turnedAway({ because, seconds }: TurnedAway): Problem {
  return {
    status: because === 'caller' ? 429 : 503,
    detail: `There is too much to plan at once. Wait ${seconds} s and ask again.`,
    headers: { 'retry-after': String(seconds) },
  };
}
