import type { EventRecord } from '@/lib/store/records';
import type { TypedEvent } from './read-event';

/**
 * The record after its event was edited. What was made and accepted is told by the number of a run, so it moves along
 * with its run; what was said about a run that is gone goes with it. An accepted plan stays only where every run was
 * part of it.
 */
export function recordWithEvent(record: EventRecord, { event, from }: TypedEvent): EventRecord {
  const made = mapValues(record.made, (runs) =>
    runs.flatMap(({ run, setting }) => {
      const now = from.indexOf(run);
      return now === -1 ? [] : [{ run: now, setting }];
    }),
  );
  const accepted = mapValues(record.accepted, (settings) => {
    const moved = from.flatMap((run) => (run === null ? [] : (settings[run] ?? [])));
    return moved.length === event.runs.length ? moved : [];
  });
  return { ...record, event, made, accepted: withoutEmpty(accepted) };
}

function mapValues<V, W>(values: Readonly<Record<string, V>>, change: (value: V) => W): Record<string, W> {
  return Object.fromEntries(Object.entries(values).map(([key, value]) => [key, change(value)]));
}

function withoutEmpty<V>(lists: Readonly<Record<string, V[]>>): Record<string, V[]> {
  return Object.fromEntries(Object.entries(lists).filter(([, list]) => list.length > 0));
}
