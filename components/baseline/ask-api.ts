import { fail, ok, type Result } from '@/lib/result/result';

/** Why an answer of our own server could not be had, as a sentence. */
type AskProblem = string;

const NO_ANSWER =
  'The server cannot be reached. Without a connection the past cannot be looked up; type the air yourself.';

/** Anything that tells an answer of the right shape from others. */
type Reader<T> = {
  readonly safeParse: (
    body: unknown,
  ) => { readonly success: true; readonly data: T } | { readonly success: false };
};

type Ask<T> = { readonly path: string; readonly reader: Reader<T>; readonly signal: AbortSignal };

/** Asks a route of this app and reads what it says, also where it says why not (RFC 9457). */
export async function askApi<T>({ path, reader, signal }: Ask<T>): Promise<Result<T, AskProblem>> {
  try {
    const response = await fetch(path, { signal, headers: { accept: 'application/json' } });
    const body: unknown = await response.json();
    if (!response.ok) return fail(detailOf(body));
    const parsed = reader.safeParse(body);
    return parsed.success ? ok(parsed.data) : fail('The answer could not be read. Reload the page.');
  } catch {
    return fail(NO_ANSWER);
  }
}

function detailOf(body: unknown): AskProblem {
  const found = typeof body === 'object' && body !== null && 'detail' in body ? body.detail : null;
  return typeof found === 'string' && found !== '' ? found : NO_ANSWER;
}
