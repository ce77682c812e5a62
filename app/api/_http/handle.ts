import type { Result } from '@/lib/result/result';
import { type Problem, problemResponse } from './problem';

/** Answers with JSON (or with a response that is ready made) or a problem. A fault of our own is logged and told without its inside. */
export async function handle(answer: () => Promise<Result<unknown, Problem>>): Promise<Response> {
  try {
    const result = await answer();
    if (!result.ok) return problemResponse(result.reason);
    if (result.value instanceof Response) return result.value;
    return Response.json(result.value, { headers: { 'cache-control': 'no-store' } });
  } catch (error) {
    console.error(error);
    return problemResponse({
      status: 500,
      detail: 'Something broke here, not in what you sent. Try again later.',
    });
  }
}

/** The answer to every method a route does not have. */
export function onlyAllows(...methods: readonly string[]): () => Response {
  const allow = methods.join(', ');
  return () =>
    problemResponse({ status: 405, detail: `This address takes ${allow} only.`, headers: { allow } });
}
