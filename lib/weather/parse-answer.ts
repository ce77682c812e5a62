import type * as z from 'zod/mini';
import { fail, ok, type Result } from '@/lib/result/result';
import type { AnswerProblem } from './problem';

/** Checks what came over the wire; the first field that does not fit is named. */
export function parseAnswer<S extends z.ZodMiniType>(
  schema: S,
  json: unknown,
): Result<z.output<S>, AnswerProblem> {
  const parsed = schema.safeParse(json);
  if (parsed.success) return ok(parsed.data);
  const path = parsed.error.issues[0]?.path.map(String).join('.') ?? '';
  return fail({ code: 'unexpected-shape', field: path === '' ? 'the whole answer' : path });
}
