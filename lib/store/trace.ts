import { crc32 } from './crc32';
import { type Leaves, leavesOf } from './leaves';
import type { TableName } from './records';
import { sameValue } from './same-value';
import { NO_TRACE, type Trace, type WriteDot } from './trace-schema';

const own = <V>(all: Readonly<Record<string, V>>, key: string): V | undefined =>
  Object.hasOwn(all, key) ? all[key] : undefined;

/** The write a field comes from; what stood there before traces were kept goes by what it says. */
export function markOf(trace: Trace, path: string, value: unknown): WriteDot {
  return own(trace.marks, path) ?? trace.from ?? [`=${crcOf(path, value)}`, 0];
}

export function crcOf(path: string, value: unknown): string {
  return crc32(new TextEncoder().encode(`${path} ${JSON.stringify(value)}`)).toString(16);
}

/** Whether a record has known this write: if the field is another there now, that is newer. */
export const knows = ({ seen }: Trace, [by, at]: WriteDot): boolean => (own(seen, by) ?? -1) >= at;

/** Of two writes that did not know each other, the one with more writes before it; the same on both devices. */
export const isLater = (a: WriteDot, b: WriteDot): boolean => a[1] > b[1] || (a[1] === b[1] && a[0] > b[0]);

/** Whether `there` knows of more writes by a device than are known here. */
export const isAhead = (there: Trace, here: Trace | undefined, device: string): boolean =>
  (own(there.seen, device) ?? 0) > (own(here?.seen ?? {}, device) ?? 0);

/** The same trace with each device by another name. */
export function traceRenamed({ from, marks, seen }: Trace, named: (device: string) => string): Trace {
  const renamed = ([by, at]: WriteDot): WriteDot => [named(by), at];
  return {
    ...(from === undefined ? {} : { from: renamed(from) }),
    marks: Object.fromEntries(Object.entries(marks).map(([path, mark]) => [path, renamed(mark)])),
    seen: Object.fromEntries(Object.entries(seen).map(renamed)),
  };
}

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
  const dot: WriteDot = [device, Math.max(revision, ...Object.values(trace.seen).map((at) => at + 1))];
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
