import * as z from 'zod/mini';

/**
 * What could not stay in its table, kept as text and shown to the person: a record that was damaged, one that was
 * changed both here, while values were kept in memory, and in another tab, or a field that lost in a merge.
 */
export const setAsideSchema = z.strictObject({
  key: z.string().check(z.minLength(1), z.maxLength(600)),
  why: z.enum(['damaged', 'changed-twice', 'merged']),
  table: z.string().check(z.maxLength(64)),
  id: z.string().check(z.maxLength(64)),
  /** The record, or the field, as it was found, as JSON text. */
  text: z.string(),
  issues: z.array(z.strictObject({ path: z.string(), message: z.string() })),
  /** Of a merge: the field that lost, by its path; a record as a whole where empty. */
  path: z.optional(z.string().check(z.maxLength(400))),
  /** Of a merge: what was merged, and on which side of it the field stood. */
  from: z.optional(
    z.strictObject({ name: z.string().check(z.maxLength(200)), side: z.enum(['here', 'there']) }),
  ),
});

type Told = z.output<typeof setAsideSchema>;
export type SetAside = Omit<Told, 'issues'> & {
  readonly issues: readonly { readonly path: string; readonly message: string }[];
};
