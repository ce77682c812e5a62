import type { Result } from '@/lib/result/result';
import { type Problem, problemResponse } from './problem';
import { createRateLimit, type RateLimit } from './rate-limit';
import { type Holding, sharedAnswer, unlessKnown } from './shared-answer';

/** On globalThis, since every route may be bundled with a copy of this module of its own. */
const shared = globalThis as typeof globalThis & { heavyAirRateLimit?: RateLimit };

function secondsToWait(request: Request): number | null {
  shared.heavyAirRateLimit ??= createRateLimit(process.env);
  return shared.heavyAirRateLimit(request, Date.now());
}

function tooManyRequests(seconds: number): Response {
  return problemResponse({
    status: 429,
    detail: `Too many requests at once. Wait ${seconds} s and ask again.`,
    headers: { 'retry-after': String(seconds) },
  });
}

/**
 * Answers with JSON (or with a response that is ready made) or a problem; JSON that is the same for all who ask may be
 * held by others for as long as is said. A fault of our own is logged and told without its inside.
 */
export async function handle(
  request: Request,
  answer: () => Promise<Result<unknown, Problem>>,
  holding?: Holding,
): Promise<Response> {
  const wait = secondsToWait(request);
  if (wait !== null) return tooManyRequests(wait);
  try {
    const result = await answer();
    if (!result.ok) return problemResponse(result.reason);
    if (result.value instanceof Response) return unlessKnown(request, result.value);
    if (holding !== undefined) return unlessKnown(request, sharedJson(result.value, holding));
    return Response.json(result.value, { headers: { 'cache-control': 'no-store' } });
  } catch (error) {
    logFault(error);
    return problemResponse({
      status: 500,
      detail: 'Something broke here, not in what you sent. Try again later.',
    });
  }
}

/** A fault of our own, for whoever runs the server. */
export function logFault(error: unknown): void {
  console.error(error);
}

function sharedJson(value: unknown, holding: Holding): Response {
  return sharedAnswer(new TextEncoder().encode(JSON.stringify(value)), holding);
}

const METHODS = ['DELETE', 'GET', 'OPTIONS', 'PATCH', 'POST', 'PUT'] as const;
type Method = (typeof METHODS)[number];

/** The methods a route does not have, each with its answer; the route exports them by name. */
export function refusedBut<M extends Method>(
  ...methods: readonly M[]
): Readonly<Record<Exclude<Method, M>, () => Response>> {
  const allow = methods.join(', ');
  const refuse = () =>
    problemResponse({ status: 405, detail: `This address takes ${allow} only.`, headers: { allow } });
  // fromEntries forgets which keys went in. HEAD is answered by the framework from GET.
  return Object.fromEntries(METHODS.map((method) => [method, refuse])) as Record<Method, () => Response>;
}
