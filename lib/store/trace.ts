import * as z from 'zod';
import { crc32 } from './crc32';
import { type Leaves, leavesOf } from './leaves';
import type { TableName } from './records';
import { sameValue } from './same-value';

/** One write of one device: its name, and a count that rises with every write of the record, whatever its clock says. */
const dotSchema = z.tuple([z.string().max(120), z.int().min(0)]);
export type Dot = z.output<typeof dotSchema>;

/** Where the fields of a record come from, so that two devices can tell what is newer without a clock. */
export const traceSchema = z.strictObject({
  /** The write that put there what `marks` does not name. Absent: it stood there before traces were kept. */
  from: dotSchema.optional(),
  /** By path: the write that put the field as it is. */
  marks: z.record(z.string().max(400), dotSchema),
  /** By device: up to which of its writes this record knows all. A version vector. */
  seen: z.record(z.string().max(120), z.int().min(0)),
});
export type Trace = z.output<typeof traceSchema>;

export const NO_TRACE: Trace = { marks: {}, seen: {} };

const own = <V>(all: Readonly<Record<string, V>>, key: string): V | undefined =>
  Object.hasOwn(all, key) ? all[key] : undefined;

/** The write a field comes from; what stood there before traces were kept goes by what it says. */
export function markOf(trace: Trace, path: string, value: unknown): Dot {
  return own(trace.marks, path) ?? trace.from ?? [`=${crcOf(path, value)}`, 0];
}

export function crcOf(path: string, value: unknown): string {
  return crc32(new TextEncoder().encode(`${path} ${JSON.stringify(value)}`)).toString(16);
}

/** Whether a record has known this write: if the field is another there now, that is newer. */
export const knows = ({ seen }: Trace, [by, at]: Dot): boolean => (own(seen, by) ?? -1) >= at;

/** Of two writes that did not know each other, the one with more writes before it; the same on both devices. */
export const isLater = (a: Dot, b: Dot): boolean => a[1] > b[1] || (a[1] === b[1] && a[0] > b[0]);

export function joinedSeen(a: Trace['seen'], b: Trace['seen']): Trace['seen'] {
  const devices = [...new Set([...Object.keys(a), ...Object.keys(b)])].sort();
  return Object.fromEntries(devices.map((by) => [by, Math.max(own(a, by) ?? 0, own(b, by) ?? 0)]));
}

type Writing = {
  readonly table: TableName;
  /** null where there was no record, or a removed one. */
  readonly before: unknown;
  readonly after: unknown;
  readonly trace: Trace | undefined;
  readonly device: string;
  readonly revision: number;
};

/** The trace of a record after a write. */
export function traceAfter({ table, before, after, trace = NO_TRACE, device, revision }: Writing): Trace {
  const dot: Dot = [device, Math.max(revision, ...Object.values(trace.seen).map((at) => at + 1))];
  if (before === null) return { from: dot, marks: {}, seen: { ...trace.seen, [device]: dot[1] } };
  const [old, now] = [leavesOf(table, before), leavesOf(table, after)];
  const marks = { ...trace.marks };
  const seen = { ...trace.seen };
  for (const path of changedPaths(old, now)) {
    if (old.has(path)) {
      const [by, at] = markOf(trace, path, old.get(path));
      seen[by] = Math.max(own(seen, by) ?? 0, at);
    }
    delete marks[path];
    if (now.has(path)) marks[path] = dot;
    seen[device] = dot[1];
  }
  return { ...trace, marks, seen };
}

function changedPaths(old: Leaves, now: Leaves): readonly string[] {
  return [...new Set([...old.keys(), ...now.keys()])].filter(
    (path) => old.has(path) !== now.has(path) || !sameValue(old.get(path), now.get(path)),
  );
}
