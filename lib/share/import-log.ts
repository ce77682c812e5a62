import type { ReadLogEntry } from '@/lib/share/read-log-csv';
import type { LogRecord, Stored } from '@/lib/store/records';
import type { Snapshot, SnapshotValues } from '@/lib/store/store-type';

/** What a file would do, before it does anything. */
export type LogPreview = {
  readonly added: readonly ReadLogEntry[];
  /** Here already, just as in the file. */
  readonly same: number;
  /** Here with the same id but different: what is here stays. */
  readonly different: number;
};

/** Entries without an id are known again by machine and time. */
export function previewLog(entries: readonly ReadLogEntry[], log: readonly Stored<LogRecord>[]): LogPreview {
  const byId = new Map(log.map(({ id, value }) => [id, value]));
  const byMoment = new Map(log.map(({ value }) => [momentOf(value), value]));
  const here = ({ id, value }: ReadLogEntry): LogRecord | undefined =>
    (id === null ? undefined : byId.get(id)) ?? byMoment.get(momentOf(value));
  const known = entries.flatMap((entry) => {
    const mine = here(entry);
    return mine === undefined ? [] : [{ mine, theirs: entry.value }];
  });
  const same = known.filter(({ mine, theirs }) => JSON.stringify(mine) === JSON.stringify(theirs)).length;
  return {
    added: entries.filter((entry) => here(entry) === undefined),
    same,
    different: known.length - same,
  };
}

function momentOf({ machineId, at }: LogRecord): string {
  return `${machineId} ${Date.parse(at)}`;
}

/** With the new entries of a file. What was written meanwhile in another tab is not doubled. */
export function withLogEntries(
  current: Snapshot,
  entries: readonly ReadLogEntry[],
  newId: () => string,
): SnapshotValues {
  const { added } = previewLog(entries, current.log);
  return {
    ...current,
    log: [...current.log, ...added.map(({ id, value }) => ({ id: id ?? newId(), value }))],
  };
}
