import { fail, ok, type Result } from '@/lib/result/result';
import { instant } from '@/lib/time/instant';
import type { Kept } from './kept';
import type { LookupProblem, SourceProblem } from './problem';
import type { RequestDeps } from './request/ask';
import { type BoundedCache, createBoundedCache } from './request/bounded-cache';
import { inTime } from './request/in-time';
import { createSingleFlight, type SingleFlight } from './request/single-flight';

/** Remembered answers of one kind, and the questions under way. */
export type Lookup<V> = {
  readonly kept: BoundedCache<Kept<V>>;
  readonly flights: SingleFlight<Result<V, LookupProblem>>;
};

export function createLookup<V>(most: number): Lookup<V> {
  return { kept: createBoundedCache(most), flights: createSingleFlight() };
}

export type LookupQuestion<V> = {
  readonly key: string;
  /** How long an answer holds [ms]. */
  readonly freshMs: number;
  readonly ask: (deadline: AbortSignal) => Promise<Result<V, SourceProblem>>;
};

/** An answer from memory, or one request shared by all who ask for the same; an old answer where that fails. */
export async function lookUp<V>(
  lookup: Lookup<V>,
  { key, freshMs, ask }: LookupQuestion<V>,
  deps: RequestDeps,
): Promise<Result<V, LookupProblem>> {
  const kept = lookup.kept.get(key);
  if (kept !== undefined && deps.now() < kept.freshUntil) return ok(kept.value);
  return lookup.flights.run(key, async () => {
    const deadline = new AbortController();
    const { totalMs } = deps.timings;
    const timer = setTimeout(() => deadline.abort(), totalMs);
    // Whoever asks hears the deadline and knows why there is nothing; this is for one that does not.
    const answer = await inTime(ask(deadline.signal), { ms: totalMs + GRACE_MS, late }).finally(() =>
      clearTimeout(timer),
    );
    if (answer.ok) {
      lookup.kept.set(key, { value: answer.value, freshUntil: instant(deps.now() + freshMs) });
      return answer;
    }
    // Places and past winters do not change: an old answer is as good.
    if (kept !== undefined) return ok(kept.value);
    return fail({
      code: 'lookup-failed',
      problem: answer.reason,
      retryAfterSeconds: retryAfter(answer.reason, deps),
    });
  });
}

/** Long enough to hear the deadline, and short enough that nobody waits for it [ms]. */
const GRACE_MS = 200;
const late = (): Result<never, SourceProblem> => fail({ code: 'timeout' });

const RETRY_DEFAULT_S = 30;
const RETRY_MOST_S = 3600;

function retryAfter(problem: SourceProblem, deps: RequestDeps): number {
  if (!('until' in problem)) return RETRY_DEFAULT_S;
  return Math.min(Math.max(Math.ceil((problem.until - deps.now()) / 1000), 1), RETRY_MOST_S);
}
