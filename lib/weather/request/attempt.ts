import { fail, ok, type Result } from '@/lib/result/result';
import { type Instant, instant } from '@/lib/time/instant';
import type { FetchProblem } from '@/lib/weather/problem';
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

/** Sends one request and reads its answer; whatever goes wrong comes back as a named problem. */
export async function attempt(ask: Attempt, outside: Outside): Promise<Result<Answer, FetchProblem>> {
  const tooLate = new AbortController();
  const timer = setTimeout(() => tooLate.abort(), ask.attemptMs);
  const signal = AbortSignal.any([ask.deadline, tooLate.signal]);
  try {
    const response = await outside.fetch(ask.url, {
      headers: { accept: 'application/json', ...ask.headers },
      redirect: 'manual',
      cache: 'no-store',
      signal,
    });
    return await read(response, outside.now());
  } catch {
    return fail(signal.aborted ? { code: 'timeout' } : { code: 'unreachable' });
  } finally {
    clearTimeout(timer);
    // Whatever is still coming in is not wanted.
    tooLate.abort();
  }
}

async function read(response: Response, now: Instant): Promise<Result<Answer, FetchProblem>> {
  const validity = readValidity(response);
  if (response.status === 304) return ok({ kind: 'not-modified', validity });
  // 'manual' hides the status of a redirect in browsers (type opaqueredirect) and shows it in Node.
  if (response.type === 'opaqueredirect' || (response.status >= 300 && response.status < 400))
    return fail({ code: 'redirected' });
  const body = await readBody(response, MOST_BYTES);
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
