import { fail, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import type { Host, Service, WeatherSettings } from '@/lib/weather/environment';
import type { FetchProblem, SourceProblem } from '@/lib/weather/problem';
import { type Answer, attempt, type Outside } from './attempt';
import { afterAskedRest, afterFailure, type Breaker, HEALTHY, isResting } from './breaker';
import type { Pool } from './pool';
import type { Timings } from './timings';

/** What the request layer remembers between requests. */
export type RequestMemory = {
  readonly breakers: Map<Host, Breaker>;
  readonly pools: Readonly<Record<Service, Pool>>;
};

export type RequestDeps = Outside & {
  /** 0 to 1. */
  readonly random: () => number;
  readonly timings: Timings;
  readonly settings: () => WeatherSettings;
  /** Who asks: callers take turns where requests have to wait. */
  readonly caller: string;
  readonly memory: RequestMemory;
  /** Hears of every request that failed, the first of two tries too. */
  readonly onFailure?: (host: Host, code: FetchProblem['code']) => void;
};

export type Ask = {
  readonly host: Host;
  readonly url: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly deadline: AbortSignal;
};

/** Asks a service, with one retry, unless it is resting; and remembers how it went. */
export async function ask(question: Ask, deps: RequestDeps): Promise<Result<Answer, FetchProblem>> {
  const rest = restOf(question.host, deps);
  return rest === null ? inTurn(question, () => askNow(question, deps), deps) : fail(rest);
}

/** Runs a job when there is room for one more request to the service. */
export function inTurn<T, R>(
  { host, deadline }: Pick<Ask, 'host' | 'deadline'>,
  job: () => Promise<Result<T, R>>,
  deps: RequestDeps,
): Promise<Result<T, R | FetchProblem>> {
  const service = serviceOf(host);
  const width = deps.settings().concurrency[service];
  const turn = { caller: deps.caller, deadline, width, longestMs: deps.timings.totalMs };
  return deps.memory.pools[service].run(turn, job);
}

function serviceOf(host: Host): Service {
  return host === 'metNorway' || host === 'weatherGov' ? host : 'openMeteo';
}

/** What has happened while waiting for this turn counts: the service may be resting by now, or the time be up. */
export async function askNow(question: Ask, deps: RequestDeps): Promise<Result<Answer, FetchProblem>> {
  const rest = restOf(question.host, deps);
  if (rest !== null) return fail(rest);
  if (question.deadline.aborted) return fail({ code: 'busy' });
  const answer = await askTwice(question, deps);
  const before = deps.memory.breakers.get(question.host) ?? HEALTHY;
  deps.memory.breakers.set(question.host, afterAnswer(before, answer, deps.now()));
  return answer;
}

/** Why a service is not to be asked now; null where it may be. */
export function restOf(host: Host, deps: RequestDeps): FetchProblem | null {
  const breaker = deps.memory.breakers.get(host) ?? HEALTHY;
  if (!isResting(breaker, deps.now())) return null;
  return { code: breaker.asked ? 'rate-limited' : 'resting', until: breaker.restingUntil };
}

async function askTwice(question: Ask, deps: RequestDeps): Promise<Result<Answer, FetchProblem>> {
  const { fetch, now, timings } = deps;
  const once = async () => {
    const answer = await attempt(
      {
        url: question.url,
        headers: question.headers ?? {},
        deadline: question.deadline,
        attemptMs: timings.attemptMs,
      },
      { fetch, now },
    );
    if (!answer.ok) deps.onFailure?.(question.host, answer.reason.code);
    return answer;
  };
  const first = await once();
  if (first.ok) return first;
  const wait = waitBeforeRetry(first.reason, deps);
  if (wait === null) return first;
  await sleep(wait, question.deadline);
  return question.deadline.aborted ? first : once();
}

/** How long to wait before the one retry [ms]; null where a retry is of no use or not wanted. */
function waitBeforeRetry(problem: FetchProblem, deps: RequestDeps): number | null {
  const { retryLeastMs, retryMostMs } = deps.timings;
  const jitter = deps.random() * retryLeastMs;
  if (problem.code === 'unreachable') return retryLeastMs + jitter;
  if (problem.code === 'bad-status') return problem.status >= 500 ? retryLeastMs + jitter : null;
  if (problem.code !== 'rate-limited') return null;
  const wanted = problem.until - deps.now();
  return wanted <= retryMostMs ? Math.max(wanted, retryLeastMs) + jitter : null;
}

function sleep(ms: number, deadline: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const done = (): void => {
      clearTimeout(timer);
      deadline.removeEventListener('abort', done);
      resolve();
    };
    const timer = setTimeout(done, ms);
    deadline.addEventListener('abort', done);
  });
}

/** Statuses that are about the question, not about the service's health. */
const ABOUT_THE_QUESTION = [400, 404, 422];

export function isAboutTheQuestion(problem: SourceProblem): boolean {
  return problem.code === 'bad-status' && ABOUT_THE_QUESTION.includes(problem.status);
}

function afterAnswer(breaker: Breaker, answer: Result<Answer, FetchProblem>, now: Instant): Breaker {
  if (answer.ok) return HEALTHY;
  const problem = answer.reason;
  if (problem.code === 'rate-limited') return afterAskedRest(breaker, problem.until);
  if (isAboutTheQuestion(problem)) return breaker;
  return afterFailure(breaker, now);
}
