import * as z from 'zod';

/**
 * What could not stay in its table, kept as text and shown to the person: a record that was damaged, one that was
 * changed both here, while values were kept in memory, and in another tab, or a field that lost in a merge.
 */
export const setAsideSchema = z.strictObject({
  key: z.string().min(1).max(600),
  why: z.enum(['damaged', 'changed-twice', 'merged']),
  table: z.string().max(64),
  id: z.string().max(64),
  /** The record, or the field, as it was found, as JSON text. */
  text: z.string(),
  issues: z.array(z.strictObject({ path: z.string(), message: z.string() })),
  /** Of a merge: the field that lost, by its path; a record as a whole where empty. */
  path: z.string().max(400).optional(),
  /** Of a merge: what was merged, and on which side of it the field stood. */
  from: z.strictObject({ name: z.string().max(200), side: z.enum(['here', 'there']) }).optional(),
});

type Told = z.output<typeof setAsideSchema>;
export type SetAside = Omit<Told, 'issues'> & {
  readonly issues: readonly { readonly path: string; readonly message: string }[];
};
