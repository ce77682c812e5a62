import type { RunJson } from '@/lib/contract/event';
import { type Leaves, partText, pathPart } from './leaves';
import type { Traced } from './merge-leaves';
import { classOf } from './racer-event';
import type { EventRecord } from './records';
import { sameValue } from './same-value';
import { markOf } from './trace';

/** Runs are told by their number, which is another where the runs of the night are others: which one is it there? */
export function runsBetween(from: readonly RunJson[], to: readonly RunJson[]): readonly (number | null)[] {
  const taken = new Set<number>();
  const take = (found: number): number | null => {
    if (found === -1) return null;
    taken.add(found);
    return found;
  };
  const free = (same: (run: RunJson) => boolean): number =>
    to.findIndex((run, i) => !taken.has(i) && same(run));
  // By name first: a delay moves every start, and often onto the start of the run before.
  const byName = from.map(({ name }) => take(free((run) => run.name === name)));
  return byName.map((found, i) => {
    const start = Date.parse(from[i]?.start ?? '');
    return found ?? take(free((run) => Date.parse(run.start) === start));
  });
}

/** The runs of a night: those for everybody, and those of classes. */
export type RunsOfNight = Pick<EventRecord, 'event' | 'club'>;

export type Renumbered = Traced & {
  /** What was said of runs that the other runs do not have. */
  readonly gone: Leaves;
};

const runsOfRacer = (night: RunsOfNight, machineId: string): readonly RunJson[] =>
  classOf(night, machineId)?.runs ?? night.event.runs;

const OF_RUN = /^(made|planned)\/([^/]+)\/\d+$/;

/** One side of a merge with its runs counted as they stand after it. */
export function renumberedRuns(side: Traced, was: RunsOfNight, merged: RunsOfNight): Renumbered {
  const ways = new Map<string, readonly (number | null)[] | null>();
  const wayOf = (machineId: string): readonly (number | null)[] | null => {
    const known = ways.get(machineId);
    if (known !== undefined) return known;
    const [from, to] = [runsOfRacer(was, machineId), runsOfRacer(merged, machineId)];
    const way = sameValue(from, to) ? null : runsBetween(from, to);
    ways.set(machineId, way);
    return way;
  };
  const leaves = new Map<string, unknown>();
  const gone = new Map<string, unknown>();
  const marks = { ...side.trace.marks };
  for (const [path, value] of side.leaves) {
    const [, what = '', part = ''] = OF_RUN.exec(path) ?? [];
    const way = what === '' ? null : wayOf(partText(part));
    if (way === null) {
      leaves.set(path, value);
      continue;
    }
    const told = value as EventRecord['made'][string][number];
    const now = way[told.run] ?? null;
    if (now === null) {
      gone.set(path, value);
      continue;
    }
    const moved = `${what}/${pathPart(partText(part))}/${now}`;
    leaves.set(moved, { ...told, run: now });
    marks[moved] = markOf(side.trace, path, value);
  }
  return { leaves, trace: { ...side.trace, marks }, gone };
}
