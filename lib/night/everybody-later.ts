import { instantFromJson } from '@/lib/contract/event-from-json';
import type { EventRecord } from '@/lib/store/records';
import { addMinutes, type Instant } from '@/lib/time/instant';
import { isoLocal } from '@/lib/time/zone';

type Runs = EventRecord['event']['runs'];

/** The event with every run still to come so many minutes later, of the event and of its classes. */
export function withEverybodyLater(
  record: EventRecord,
  { now, minutes }: { readonly now: Instant; readonly minutes: number },
): EventRecord {
  const { timezone } = record.event;
  const move = (time: string) => isoLocal(addMinutes(instantFromJson(time), minutes), timezone);
  return withEveryRun(record, (runs) =>
    runs.map((run) =>
      instantFromJson(run.start) > now ? { ...run, start: move(run.start), end: move(run.end) } : run,
    ),
  );
}

/** All runs of an event and of its classes: what moving everybody changes. */
export function everyRun({ event, club }: EventRecord): readonly Runs[] {
  return [event.runs, ...(club?.classes.map(({ runs }) => runs) ?? [])];
}

/** The way back: everybody's times as they were. */
export function withEveryRunAsBefore(record: EventRecord, before: EventRecord): EventRecord {
  const past = everyRun(before);
  return withEveryRun(record, (runs, i) => past[i] ?? runs);
}

function withEveryRun(record: EventRecord, change: (runs: Runs, i: number) => Runs): EventRecord {
  const { event, club } = record;
  const moved = { ...record, event: { ...event, runs: change(event.runs, 0) } };
  if (club === undefined) return moved;
  const classes = club.classes.map((each, i) => ({ ...each, runs: change(each.runs, i + 1) }));
  return { ...moved, club: { ...club, classes } };
}
