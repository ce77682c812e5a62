/** Why no newer forecast came, by what happened to the question; `status`: of HTTP, where the server refused it. */
type Fault =
  | { readonly code: 'no-signal' | 'timeout' | 'unreadable' | 'no-place' | 'not-kept' }
  | { readonly code: 'refused'; readonly status: number };

const WORDS: Readonly<Record<Exclude<Fault['code'], 'refused'>, string>> = {
  'no-signal': 'no signal',
  timeout: 'no answer',
  unreadable: 'bad answer',
  'no-place': 'no place',
  'not-kept': 'not kept',
};

const TOO_MANY_REQUESTS = 429;
const SERVER_ERROR = 500;

/** The cause in two words, to stand beside other words: "no signal", "service down", "service busy". */
export function forecastFaultText(fault: Fault): string {
  if (fault.code !== 'refused') return WORDS[fault.code];
  if (fault.status === TOO_MANY_REQUESTS) return 'service busy';
  return fault.status >= SERVER_ERROR ? 'service down' : 'not given';
}
