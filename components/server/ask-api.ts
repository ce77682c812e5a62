import { fail, ok, type Result } from '@/lib/result/result';
import type { AskProblem } from '@/lib/words/ask-problem';

/** The server itself gives up after 9 s; longer silence is the line. */
const PATIENCE_MS = 12_000;

/** The one door to our own server: asks one of its addresses for JSON, for so long and no longer. Never throws. */
export async function askApi(path: string, cancel?: AbortSignal): Promise<Result<unknown, AskProblem>> {
  const wait = waiting(cancel);
  try {
    const answer = await fetch(path, { headers: { accept: 'application/json' }, signal: wait.signal });
    if (!answer.ok) return fail(await refusalOf(answer));
    return ok(await answer.json());
  } catch (error) {
    if (wait.isOver()) return fail({ code: 'timeout' });
    return fail({ code: error instanceof SyntaxError ? 'unreadable' : 'no-signal' });
  } finally {
    wait.end();
  }
}

/** A signal for patience and for whoever asked: the platform's own way to join two is too new for some browsers. */
function waiting(cancel: AbortSignal | undefined) {
  const controller = new AbortController();
  let over = false;
  const timer = setTimeout(() => {
    over = true;
    controller.abort();
  }, PATIENCE_MS);
  const stop = () => controller.abort();
  if (cancel?.aborted === true) stop();
  cancel?.addEventListener('abort', stop);
  return {
    signal: controller.signal,
    isOver: () => over,
    end() {
      clearTimeout(timer);
      cancel?.removeEventListener('abort', stop);
    },
  };
}

async function refusalOf(answer: Response): Promise<AskProblem> {
  const seconds = Number(answer.headers.get('retry-after') ?? Number.NaN);
  const retryAfterSeconds = Number.isFinite(seconds) ? seconds : null;
  const body: unknown = await answer.json().catch(() => null);
  if (typeof body !== 'object' || body === null) return { code: 'unreadable' };
  const detail = 'detail' in body && typeof body.detail === 'string' ? body.detail : null;
  if (detail === null) return { code: 'unreadable' };
  return { code: 'refused', status: answer.status, detail, retryAfterSeconds };
}
