import type { AskProblem } from './ask-problem';

/** Why no newer forecast came: what happened to the question, or what it lacked. */
export type ForecastFault = AskProblem | { readonly code: 'no-place' } | { readonly code: 'not-kept' };

const WORDS: Readonly<Record<Exclude<ForecastFault['code'], 'refused'>, string>> = {
  'no-signal': 'no signal',
  timeout: 'no answer',
  unreadable: 'bad answer',
  'no-place': 'no place',
  'not-kept': 'not kept',
};

const TOO_MANY_REQUESTS = 429;
const SERVER_ERROR = 500;

/** The cause in two words, to stand beside other words: "no signal", "service down", "service busy". */
export function forecastFaultText(fault: ForecastFault): string {
  if (fault.code !== 'refused') return WORDS[fault.code];
  if (fault.status === TOO_MANY_REQUESTS) return 'service busy';
  return fault.status >= SERVER_ERROR ? 'service down' : 'not given';
}
