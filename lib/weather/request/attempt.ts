import { fail, ok, type Result } from '@/lib/result/result';
import { type Instant, instant } from '@/lib/time/instant';
import type { FetchProblem } from '@/lib/weather/problem';
import { inTime } from './in-time';
import { readBody } from './read-body';
import { quietUntil } from './retry-after';
import { MOST_BYTES } from './timings';

export type Answer =
  | { readonly kind: 'body'; readonly json: unknown; readonly validity: Validity }
  /** 304: what was answered before still holds. */
  | { readonly kind: 'not-modified'; readonly validity: Validity };

/** What the service says about asking again. */
export type Validity = { readonly expires: Instant | null; readonly lastModified: string | null };

export type Attempt = {
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  /** Aborts when the time for all services together is up. */
  readonly deadline: AbortSignal;
  readonly attemptMs: number;
};

export type Outside = { readonly fetch: typeof fetch; readonly now: () => Instant };

/**
 * Sends one request and reads its answer; whatever goes wrong comes back as a named problem, and so does an answer that
 * is not there in time: neither fetch nor the body's reader need hear the signal for that.
 */
export async function attempt(ask: Attempt, outside: Outside): Promise<Result<Answer, FetchProblem>> {
  const over = new AbortController();
  // Not AbortSignal.any: Node never lets go of a signal made of others while somebody listens to it, nor of all that its
  // reason's stack holds, this answer among it.
  const end = (): void => over.abort();
  if (ask.deadline.aborted) end();
  ask.deadline.addEventListener('abort', end);
  const late = (): Result<Answer, FetchProblem> => fail({ code: 'timeout' });
  try {
    return await inTime(send(ask, over.signal, outside), { ms: ask.attemptMs, signal: ask.deadline, late });
  } finally {
    ask.deadline.removeEventListener('abort', end);
    // Whatever is still coming in is not wanted.
    end();
  }
}

async function send(
  ask: Attempt,
  signal: AbortSignal,
  outside: Outside,
): Promise<Result<Answer, FetchProblem>> {
  try {
    const response = await outside.fetch(ask.url, {
      headers: { accept: 'application/json', ...ask.headers },
      redirect: 'manual',
      cache: 'no-store',
      signal,
    });
    return await read(response, signal, outside.now());
  } catch {
    return fail(signal.aborted ? { code: 'timeout' } : { code: 'unreachable' });
  }
}

async function read(
  response: Response,
  signal: AbortSignal,
  now: Instant,
): Promise<Result<Answer, FetchProblem>> {
  const validity = readValidity(response);
  if (response.status === 304) return ok({ kind: 'not-modified', validity });
  // 'manual' hides the status of a redirect in browsers (type opaqueredirect) and shows it in Node.
  if (response.type === 'opaqueredirect' || (response.status >= 300 && response.status < 400))
    return fail({ code: 'redirected' });
  const body = await readBody(response, MOST_BYTES, signal);
  if (!body.ok) return fail({ code: 'too-large' });
  if (response.status === 200) return parse(body.value, validity);
  return fail(readRefusal(response, body.value, now));
}

function parse(text: string, validity: Validity): Result<Answer, FetchProblem> {
  try {
    return ok({ kind: 'body', json: JSON.parse(text), validity });
  } catch {
    return fail({ code: 'not-json' });
  }
}

/** Open-Meteo's limits have been seen with status 400 too, so the words count as well. */
const LIMIT_WORDS = /limit exceeded|too many concurrent/i;

function readRefusal(response: Response, body: string, now: Instant): FetchProblem {
  const retryAfter = response.headers.get('retry-after');
  const limited =
    response.status === 429 ||
    (response.status === 503 && retryAfter !== null) ||
    (response.status >= 400 && response.status < 500 && LIMIT_WORDS.test(body));
  return limited
    ? { code: 'rate-limited', until: quietUntil(retryAfter, body, now) }
    : { code: 'bad-status', status: response.status };
}

function readValidity(response: Response): Validity {
  const expires = Date.parse(response.headers.get('expires') ?? '');
  return {
    expires: Number.isNaN(expires) ? null : instant(expires),
    lastModified: response.headers.get('last-modified'),
  };
}
