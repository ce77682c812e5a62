import { leavesOf } from './leaves';
import { isQuiet } from './quiet';
import type { TableName } from './records';
import { isLater, joinedSeen, knows, markOf } from './trace';
import { NO_TRACE, type Trace, type WriteDot } from './trace-schema';

/** What each device keeps for itself: a removal there says nothing elsewhere. */
const OWN: readonly TableName[] = ['forecasts', 'preferences'];

export const removalTravels = (table: TableName): boolean => !OWN.includes(table);

/** The writes that removed a record: `from`, and in `marks` those of other devices that did not know of it. */
const removalsOf = ({ from, marks }: Trace): readonly WriteDot[] =>
  from === undefined ? [] : [from, ...Object.values(marks)];

/** Of two removals of one record: both, the later one first, and all that either knew. The same in either order. */
export function joinedRemoval(a: Trace, b: Trace): Trace {
  const last = new Map<string, WriteDot>();
  for (const dot of [...removalsOf(a), ...removalsOf(b)]) {
    const known = last.get(dot[0]);
    if (known === undefined || isLater(dot, known)) last.set(dot[0], dot);
  }
  const [from, ...others] = [...last.values()].sort((x, y) => (isLater(x, y) ? -1 : 1));
  return {
    ...(from === undefined ? {} : { from }),
    marks: Object.fromEntries(others.map((dot) => [dot[0], dot])),
    seen: joinedSeen(a.seen, b.seen),
  };
}

/** Whether a record that stands was written by somebody who knew that it had been removed: then it was put back. */
export const knowsRemoval = ({ trace = NO_TRACE }: { trace?: Trace | undefined }, removed: Trace): boolean =>
  removalsOf(removed).every((dot) => knows(trace, dot));

type Standing = { readonly value: unknown; readonly trace?: Trace | undefined };

/** Whether a person said something of a record that its removal did not know of. */
export function saysMore(table: TableName, { value, trace = NO_TRACE }: Standing, removed: Trace): boolean {
  return [...leavesOf(table, value)].some(
    ([path, leaf]) => !isQuiet({ path }) && !knows(removed, markOf(trace, path, leaf)),
  );
}

/** A removal that has also heard of what stood elsewhere, so that the same is not set aside again. */
export function removalKnowing(
  table: TableName,
  removed: Trace,
  { value, trace = NO_TRACE }: Standing,
): Trace {
  const marks = [...leavesOf(table, value)].map(([path, leaf]) => markOf(trace, path, leaf));
  return { ...removed, seen: withMarks(joinedSeen(removed.seen, trace.seen), marks) };
}

/** A record put back: its fields come from where they came from, and it knows that it had been removed. */
export const putBack = (trace: Trace = NO_TRACE, removed: Trace = NO_TRACE): Trace => ({
  ...trace,
  seen: joinedSeen(trace.seen, removed.seen),
});

type Removing = {
  readonly table: TableName;
  readonly value: unknown;
  readonly trace: Trace | undefined;
  readonly device: string;
  readonly revision: number;
};

/** The trace that a removed record leaves: the removal is a write like any other, and knows all that stood there. */
export function traceOfRemoval({ table, value, trace = NO_TRACE, device, revision }: Removing): Trace {
  const at = Math.max(revision, ...Object.values(trace.seen).map((seen) => seen + 1));
  const { seen } = removalKnowing(table, NO_TRACE, { value, trace });
  return { from: [device, at], marks: {}, seen: { ...seen, [device]: at } };
}

function withMarks(seen: Trace['seen'], marks: readonly WriteDot[]): Trace['seen'] {
  const all: Record<string, number> = { ...seen };
  for (const [by, at] of marks) all[by] = Math.max(Object.hasOwn(all, by) ? (all[by] ?? 0) : 0, at);
  return all;
}
