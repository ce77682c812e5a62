import { type ContractProblem, pathPointer, pathText } from '@/lib/contract/problem';
import { contractProblemSentence } from '@/lib/words/contract-problems';
import type { Voice } from '@/lib/words/voice';

/** One bad field: where it is, twice over for people and for programs, and what is wrong in words. */
export type FieldProblem = {
  readonly path: string;
  readonly pointer: string;
  readonly code: string;
  readonly detail: string;
};

export type Problem = {
  readonly status: number;
  readonly detail: string;
  readonly errors?: readonly FieldProblem[];
  readonly headers?: Readonly<Record<string, string>>;
};

const TITLES: Readonly<Record<number, string>> = {
  400: 'Bad Request',
  401: 'Unauthorized',
  403: 'Forbidden',
  404: 'Not Found',
  405: 'Method Not Allowed',
  412: 'Precondition Failed',
  413: 'Content Too Large',
  414: 'URI Too Long',
  415: 'Unsupported Media Type',
  422: 'Unprocessable Content',
  428: 'Precondition Required',
  429: 'Too Many Requests',
  500: 'Internal Server Error',
  503: 'Service Unavailable',
};

/** More bad fields than anyone reads; the rest is counted. */
const MOST_ERRORS = 50;

/** RFC 9457; `about:blank` says that the status and the words are all there is to know. */
export function problemResponse({ status, detail, errors, headers }: Problem): Response {
  const title = TITLES[status] ?? 'Error';
  const body = { type: 'about:blank', title, status, detail, ...(errors === undefined ? {} : { errors }) };
  return new Response(JSON.stringify(body), {
    status,
    headers: { 'content-type': 'application/problem+json', 'cache-control': 'no-store', ...headers },
  });
}

/** Bad fields as an answer: 400 where the shape is wrong, 422 where the numbers make no sense together. */
export function fieldsProblem(
  problems: readonly ContractProblem[],
  voice: Voice & { readonly runNames?: readonly string[] },
): Problem {
  const errors = problems.slice(0, MOST_ERRORS).map(({ path, reason }) => ({
    path: pathText(path),
    pointer: pathPointer(path),
    code: reason.code,
    detail: contractProblemSentence(reason, voice),
  }));
  const [first] = errors;
  const where = first === undefined || first.path === '' ? '' : `${first.path}: `;
  const more = problems.length > 1 ? ` (and ${problems.length - 1} more)` : '';
  const shape = problems.some(({ reason }) => reason.code === 'field');
  return {
    status: shape ? 400 : 422,
    detail: `${where}${first?.detail ?? 'Nothing usable was sent.'}${more}`,
    errors,
  };
}
