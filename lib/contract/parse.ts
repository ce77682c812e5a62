import type * as z from 'zod/mini';
import { fail, ok, type Result } from '@/lib/result/result';
import { fieldWords } from './field-words';
import type { ContractProblem } from './problem';

/** Reads unknown data by a schema; every bad field comes back with its path and words. */
export function parseWith<S extends z.ZodMiniType>(
  schema: S,
  data: unknown,
): Result<z.output<S>, readonly ContractProblem[]> {
  const parsed = schema.safeParse(data, { error: (issue) => fieldWords(issue) });
  if (parsed.success) return ok(parsed.data);
  return fail(
    parsed.error.issues.map((issue) => ({
      // JSON has no symbols for keys; the type of zod's path allows them.
      path: issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step)),
      reason: { code: 'field', message: issue.message },
    })),
  );
}
