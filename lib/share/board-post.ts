import type * as z from 'zod/mini';
import type { boardPostSchema } from '@/lib/contract/board';
import type { EventJson } from '@/lib/contract/event';
import { placeOffsetToJson } from '@/lib/contract/place-offset';
import { hoursOfNight } from '@/lib/night/hours-of-night';
import type { NightRecords } from '@/lib/night/night';
import { machineTonight } from '@/lib/store/machine-tonight';
import { eventOfRacer } from '@/lib/store/racer-event';
import type { EventRecord } from '@/lib/store/records';
import { rosterNames } from '@/lib/store/roster-names';
import type { Instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { type SaidOnBoard, saidForBoard, saysMoreThanBoard } from './board-said';
import { makeSharedNight } from './make-shared-night';
import { stableHash } from './stable-hash';

export type BoardPostJson = z.input<typeof boardPostSchema>;
type EntryJson = BoardPostJson['machines'][number];

/** A night with its machines as a board takes it; null where it has no machine, or neither hours nor a place. */
export function boardPostOf(nights: readonly NightRecords[], now: Instant): BoardPostJson | null {
  const [first] = nights;
  if (first === undefined) return null;
  const event = first.event.value;
  const names = rosterNames(
    event,
    nights.map(({ machine }) => machine),
  );
  const machines = nights.map((night) => entryOf(night, names, now));
  const hours = hoursFor(first, event, machines, now);
  if (hours.length === 0 && event.event.place === undefined) return null;
  const offset = event.withoutPlaceOffset === true ? undefined : first.placeOffset;
  return {
    event: event.event,
    machines,
    hours,
    hoursTyped: isTyped(event),
    readings: event.readings,
    ...(offset === undefined ? {} : { placeOffset: placeOffsetToJson(offset) }),
  };
}

const isTyped = ({ typed }: EventRecord): boolean => typed !== null && typed.hours.length > 0;

function entryOf(
  { event: { value }, machine, box, log }: NightRecords,
  names: ReadonlyMap<string, string>,
  now: Instant,
): EntryJson {
  const { id } = machine;
  const { runs } = eventOfRacer(value, id);
  const { outFrom, fitted, fittings, accepted, made } = value;
  const inEngine = fitted[id];
  const told = fittings?.[id] ?? (inEngine === undefined ? [] : [{ at: isoUtc(now), setting: inEngine }]);
  const plan = accepted[id];
  const out = outFrom?.[id];
  return {
    id,
    name: names.get(id) ?? machine.value.machine.name,
    machine: machineTonight(machine.value, box, log),
    ...(runs === value.event.runs ? {} : { runs }),
    fittings: [...told],
    ...(plan?.length === runs.length ? { accepted: plan } : {}),
    made: made[id] ?? [],
    ...(out === undefined ? {} : { outFrom: out }),
  };
}

/** The hours around all runs, of the event and of its classes. */
function hoursFor(
  { forecast }: NightRecords,
  record: EventRecord,
  machines: readonly EntryJson[],
  now: Instant,
): NonNullable<BoardPostJson['hours']> {
  const series = hoursOfNight(record, forecast);
  if (series === null || !series.ok) return [];
  const runs = [record.event.runs, ...(record.club?.classes.map((each) => each.runs) ?? [])].flat();
  const event: EventJson = { ...record.event, runs };
  if (runs.length === 0 || machines.length === 0) return [];
  const given = { event, machines: [], series: series.value, hoursTyped: isTyped(record), sharedAt: now };
  return makeSharedNight({ ...given, readings: record.readings }).hours;
}

/**
 * What the keeper's browser changes on a board that holds what was said so far: all but the plan, since the board goes by
 * what it told last.
 */
export function boardPatchOf(
  { machines, ...night }: BoardPostJson,
  record: EventRecord,
  board: SaidOnBoard,
): object {
  return {
    ...night,
    machines: machines.map(({ accepted: _, ...entry }, i) => ({
      ...entry,
      fittings: saidForBoard(record, board, entry.id ?? String(i + 1)),
    })),
  };
}

/**
 * The same for the same night; what is said at the machines is compared one by one (`board-said.ts`), and a newer
 * forecast alone is no change, since the board fetches its own.
 */
export function boardMark({ hours, machines, ...night }: BoardPostJson): string {
  const entries = machines.map(({ fittings: _, accepted: __, ...entry }) => entry);
  return stableHash(JSON.stringify([night, entries, night.hoursTyped === true ? hours : null]));
}

/** Whether the board does not know of something that was changed or said here. */
export function boardLacks(nights: readonly NightRecords[], now: Instant): boolean {
  const record = nights[0]?.event.value;
  const night = record?.board === undefined ? null : boardPostOf(nights, now);
  if (record?.board === undefined || night === null) return false;
  return boardMark(night) !== record.board.sent || saysMoreThanBoard(record);
}
