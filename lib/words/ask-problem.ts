/** Why our own server gave nothing. */
export type AskProblem =
  | { readonly code: 'no-signal' }
  | { readonly code: 'timeout' }
  /** It answered with a reason, in words. */
  | {
      readonly code: 'refused';
      /** Of HTTP. */
      readonly status: number;
      readonly detail: string;
      readonly retryAfterSeconds: number | null;
    }
  | { readonly code: 'unreadable' };

/** What happened when the server was asked for something, and what to do; `instead` is the way without it. */
export function askProblemWords(problem: AskProblem, instead: string): string {
  switch (problem.code) {
    case 'no-signal':
      return `There is no signal, or the server cannot be reached. ${instead}`;
    case 'timeout':
      return `The server did not answer in time. ${instead}`;
    case 'refused':
      return problem.detail;
    case 'unreadable':
      return `The server sent something unreadable. ${instead}`;
  }
}
