import * as z from 'zod';

/** The name of a record in its table. */
export const recordId = z.string().min(1).max(64);
