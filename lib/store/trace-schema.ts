import * as z from 'zod/mini';

/** One write of one device: its name, and a count that rises with every write of the record, whatever its clock says. */
const dotSchema = z.tuple([z.string().check(z.maxLength(120)), z.int().check(z.minimum(0))]);
export type WriteDot = z.output<typeof dotSchema>;

/** Where the fields of a record come from, so that two devices can tell what is newer without a clock. */
export const traceSchema = z.strictObject({
  /** The write that put there what `marks` does not name. Absent: it stood there before traces were kept. */
  from: z.optional(dotSchema),
  /** By path: the write that put the field as it is. */
  marks: z.record(z.string().check(z.maxLength(400)), dotSchema),
  /** By device: up to which of its writes this record knows all. A version vector. */
  seen: z.record(z.string().check(z.maxLength(120)), z.int().check(z.minimum(0))),
});
export type Trace = z.output<typeof traceSchema>;

/** Of a record that was not written to since traces are kept. */
export const NO_TRACE: Trace = { marks: {}, seen: {} };
