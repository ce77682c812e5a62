import { fail, ok, type Result } from '@/lib/result/result';

/** Why our own server gave nothing. */
export type AskProblem =
  | { readonly code: 'no-signal' }
  | { readonly code: 'timeout' }
  /** It answered with a reason, in words. */
  | { readonly code: 'refused'; readonly detail: string; readonly retryAfterSeconds: number | null }
  | { readonly code: 'unreadable' };

/** The server itself gives up after 9 s; longer silence is the line. */
const PATIENCE_MS = 12_000;

/** Asks one of our own addresses for JSON. Never throws. */
export async function askApi(path: string): Promise<Result<unknown, AskProblem>> {
  try {
    const answer = await fetch(path, {
      headers: { accept: 'application/json' },
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (!answer.ok) return fail(await refusalOf(answer));
    return ok(await answer.json());
  } catch (error) {
    if (error instanceof DOMException && error.name === 'TimeoutError') return fail({ code: 'timeout' });
    return fail({ code: error instanceof SyntaxError ? 'unreadable' : 'no-signal' });
  }
}

async function refusalOf(answer: Response): Promise<AskProblem> {
  const seconds = Number(answer.headers.get('retry-after') ?? Number.NaN);
  const retryAfterSeconds = Number.isFinite(seconds) ? seconds : null;
  const body: unknown = await answer.json().catch(() => null);
  if (typeof body !== 'object' || body === null) return { code: 'unreadable' };
  const detail = 'detail' in body && typeof body.detail === 'string' ? body.detail : null;
  if (detail === null) return { code: 'unreadable' };
  return { code: 'refused', detail, retryAfterSeconds };
}
