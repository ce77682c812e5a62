import { fail, ok, type Result } from '@/lib/result/result';
import { askProblemWords } from '@/lib/words/ask-problem';
import { askApi } from './ask-api';

/** Anything that tells an answer of the right shape from others. */
type Reader<T> = {
  readonly safeParse: (
    body: unknown,
  ) => { readonly success: true; readonly data: T } | { readonly success: false };
};

export type Wanted<T> = {
  readonly path: string;
  readonly reader: Reader<T>;
  /** What to do without the answer, as a sentence. */
  readonly instead: string;
  readonly cancel?: AbortSignal;
};

/** Asks our own server for something of a known shape; what went wrong comes as a sentence. */
export async function askFor<T>({ path, reader, instead, cancel }: Wanted<T>): Promise<Result<T, string>> {
  const answer = await askApi(path, cancel);
  if (!answer.ok) return fail(askProblemWords(answer.reason, instead));
  const parsed = reader.safeParse(answer.value);
  return parsed.success ? ok(parsed.data) : fail(askProblemWords({ code: 'unreadable' }, instead));
}
