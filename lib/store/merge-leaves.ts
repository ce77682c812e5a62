import type { Leaves } from './leaves';
import { sameValue } from './same-value';
import { isLater, joinedSeen, knows, markOf } from './trace';
import type { Trace, WriteDot } from './trace-schema';

/** A record taken apart, with where its fields come from. */
export type Traced = { readonly leaves: Leaves; readonly trace: Trace };

/**
 * What a merge does to one field. `added` and `changed`: the other side's is newer. `removed`: it was taken away there.
 * `kept` and `taken`: both sides changed it without knowing of each other; one stands, the other is set aside.
 */
export type FieldChange = {
  readonly path: string;
  readonly how: 'added' | 'changed' | 'removed' | 'kept' | 'taken';
  readonly here?: unknown;
  readonly there?: unknown;
};

export type MergedLeaves = Traced & { readonly changes: readonly FieldChange[] };

type Fate = { readonly side: 'here' | 'there' | 'gone'; readonly how: FieldChange['how'] | null };

/**
 * Merges two states of one record field by field. What the other side has known is older than what stands there now;
 * two changes that did not know of each other are a conflict. Clocks are not asked.
 *
 * @param covers which paths the other side speaks of at all; what it leaves out elsewhere was not taken away
 */
export function mergeLeaves(
  here: Traced,
  there: Traced,
  covers: (path: string) => boolean = () => true,
): MergedLeaves {
  const placed: Placed[] = [];
  const changes: FieldChange[] = [];
  const paths = [...new Set([...here.leaves.keys(), ...there.leaves.keys()])];
  for (const path of paths) {
    const fate = covers(path) ? fateOf(path, here, there) : { side: 'here' as const, how: null };
    const [a, b] = [here.leaves.get(path), there.leaves.get(path)];
    if (fate.how !== null) changes.push({ path, how: fate.how, here: a, there: b });
    if (fate.side === 'gone') continue;
    const value = fate.side === 'here' ? a : b;
    if (value !== undefined) placed.push({ path, value, mark: markThatStays(path, fate.side, here, there) });
  }
  const sameFields = paths.every((path) => here.leaves.has(path) && there.leaves.has(path));
  // Entries of both sides in the order in which they were written: the same on both devices.
  const ordered = sameFields ? placed : placed.sort(byWriting);
  return {
    leaves: new Map(ordered.map(({ path, value }) => [path, value])),
    trace: {
      marks: Object.fromEntries(ordered.flatMap(({ path, mark }) => (mark[1] === 0 ? [] : [[path, mark]]))),
      seen: joinedSeen(here.trace.seen, there.trace.seen),
    },
    changes,
  };
}

type Placed = { readonly path: string; readonly value: unknown; readonly mark: WriteDot };

function byWriting(a: Placed, b: Placed): number {
  return a.mark[1] - b.mark[1] || (a.mark[0] < b.mark[0] ? -1 : a.mark[0] > b.mark[0] ? 1 : 0);
}

function fateOf(path: string, here: Traced, there: Traced): Fate {
  const [inHere, inThere] = [here.leaves.has(path), there.leaves.has(path)];
  const [a, b] = [here.leaves.get(path), there.leaves.get(path)];
  const mine = markOf(here.trace, path, a);
  const theirs = markOf(there.trace, path, b);
  if (!inThere)
    return knows(there.trace, mine) ? { side: 'gone', how: 'removed' } : { side: 'here', how: null };
  if (!inHere)
    return knows(here.trace, theirs) ? { side: 'gone', how: null } : { side: 'there', how: 'added' };
  if (sameValue(a, b)) return { side: 'here', how: null };
  const [knownThere, knownHere] = [knows(there.trace, mine), knows(here.trace, theirs)];
  if (knownThere !== knownHere)
    return knownThere ? { side: 'there', how: 'changed' } : { side: 'here', how: null };
  // Nothing is known of either where both are older than traces: then what is here stays.
  return theirs[1] > 0 && isLater(theirs, mine)
    ? { side: 'there', how: 'taken' }
    : { side: 'here', how: 'kept' };
}

/** Where both sides say the same, the later write counts, so that both devices end with one trace. */
function markThatStays(path: string, side: 'here' | 'there', here: Traced, there: Traced): WriteDot {
  const [a, b] = [here.leaves.get(path), there.leaves.get(path)];
  const mine = markOf(here.trace, path, a);
  const theirs = markOf(there.trace, path, b);
  if (here.leaves.has(path) && there.leaves.has(path) && sameValue(a, b))
    return isLater(theirs, mine) ? theirs : mine;
  return side === 'here' ? mine : theirs;
}
