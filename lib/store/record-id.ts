import * as z from 'zod/mini';

/** The name of a record in its table. */
export const recordId = z.string().check(z.minLength(1), z.maxLength(64));
