import type { EventJson } from '@/lib/contract/event';
import { typedHoursAt } from '@/lib/store/pressure-answers';
import { classOf } from '@/lib/store/racer-event';
import type { EventRecord } from '@/lib/store/records';
import { withoutOffsetElsewhere } from './moved-place';

/** An event as typed; `from` says for each run which run of the opened event it was, null where it is new. */
export type TypedEvent = { readonly event: EventJson; readonly from: readonly (number | null)[] };

/**
 * The record after its event was edited. Machines of a class have runs of their own, so what was said about those
 * stays as it is.
 */
export function recordWithEvent(record: EventRecord, { event, from }: TypedEvent): EventRecord {
  const inClass = (machineId: string): boolean => classOf(record, machineId) !== null;
  return {
    ...withRenumberedRuns(
      withoutOffsetElsewhere(record, event.place),
      from,
      (machineId) => !inClass(machineId),
    ),
    typed: typedHoursAt(record, event.elevationM),
    event,
  };
}

/**
 * What was said about runs, after they were edited; `from` says for each run which one it was before. What was made,
 * planned and accepted is told by the number of a run, so it moves along with its run; what was said about a run that is gone
 * goes with it. An accepted plan stays only where every run was part of it.
 */
export function withRenumberedRuns(
  record: EventRecord,
  from: TypedEvent['from'],
  concerns: (machineId: string) => boolean,
): EventRecord {
  const moved = <R extends { readonly run: number }>(runs: readonly R[], machineId: string): R[] =>
    runs.flatMap((each) => {
      const now = concerns(machineId) ? from.indexOf(each.run) : each.run;
      return now === -1 ? [] : [{ ...each, run: now }];
    });
  const made = mapValues(record.made, moved);
  const accepted = mapValues(record.accepted, (settings, machineId) => {
    if (!concerns(machineId)) return settings;
    const kept = from.flatMap((run) => (run === null ? [] : (settings[run] ?? [])));
    return kept.length === from.length ? kept : [];
  });
  const planned = record.planned === undefined ? {} : { planned: mapValues(record.planned, moved) };
  return { ...record, made, accepted: withoutEmpty(accepted), ...planned };
}

function mapValues<V, W>(
  values: Readonly<Record<string, V>>,
  change: (value: V, key: string) => W,
): Record<string, W> {
  return Object.fromEntries(Object.entries(values).map(([key, value]) => [key, change(value, key)]));
}

function withoutEmpty<V>(lists: Readonly<Record<string, V[]>>): Record<string, V[]> {
  return Object.fromEntries(Object.entries(lists).filter(([, list]) => list.length > 0));
}
