import { clientOf } from '@/app/api/_http/client-of';
import type { Problem } from '@/app/api/_http/problem';
import { trustedProxies } from '@/app/api/_http/rate-limit';
import { servedProcess } from '@/app/api/_serve/served-process';
import { fail, ok, type Result } from '@/lib/result/result';
import type { Job } from './jobs';
import type { TurnedAway } from './threads';

type Asked<I> = { readonly request: Request; readonly input: I };

/** Plans in a thread where the server has some, else in place; or says when to come back. */
export async function planApart<I extends readonly unknown[], O>(
  job: Job<I, O>,
  { request, input }: Asked<I>,
): Promise<Result<O, Problem>> {
  const threads = servedProcess()?.planning;
  if (threads === undefined) return ok(job.work(...input));
  const caller = clientOf(request.headers, trustedProxies(process.env));
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
