import * as z from 'zod/mini';
import type { TableName } from './records';
import { traceSchema } from './trace-schema';

/** A record that was removed, with what was known of it then: its trace says by which writes it went. */
export const removedRecordSchema = z.strictObject({
  table: z.string().check(z.maxLength(64)),
  id: z.string().check(z.minLength(1), z.maxLength(64)),
  trace: traceSchema,
});

export type RemovedRecord = Omit<z.output<typeof removedRecordSchema>, 'table'> & {
  readonly table: TableName;
};
