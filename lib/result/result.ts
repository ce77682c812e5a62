/** Expected failures are values: every caller must look at `ok` before it can use `value`. */
export type Ok<T> = { readonly ok: true; readonly value: T };
export type Failure<R> = { readonly ok: false; readonly reason: R };
export type Result<T, R> = Ok<T> | Failure<R>;

export function ok<T>(value: T): Ok<T> {
  return { ok: true, value };
}

export function fail<R>(reason: R): Failure<R> {
  return { ok: false, reason };
}

/** Unwraps a result that the caller has already proven good; throws otherwise. For tests and constants. */
export function expectOk<T, R>(result: Result<T, R>): T {
  if (result.ok) return result.value;
  throw new Error(`expected a value, got ${JSON.stringify(result.reason)}`);
}
