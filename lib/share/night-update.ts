import { crc32 } from '@/lib/store/crc32';
import { leavesOf, pathPart } from '@/lib/store/leaves';
import { type IncomingRecord, type MergedSnapshot, mergedSnapshot } from '@/lib/store/merge-snapshot';
import { classOf } from '@/lib/store/racer-event';
import { recordWithMachine } from '@/lib/store/record-with-machine';
import type { EventRecord } from '@/lib/store/records';
import type { SnapshotValues } from '@/lib/store/store-type';
import { traceRenamed } from '@/lib/store/trace';
import { NO_TRACE, type Trace } from '@/lib/store/trace-schema';
import { tracePlaced } from './origin';
import type { SharedMachine, SharedNight } from './shared-night';

/** Whose records a shared night is newer news of. */
export type UpdateTarget = {
  readonly eventId: string;
  /** By place in the night; null where a machine is nobody's here. */
  readonly machineIds: readonly (string | null)[];
};

/** The records with what is new in a shared night, merged as two devices are: by field, and nothing is lost. */
export function withNightUpdate(
  current: SnapshotValues,
  night: SharedNight,
  target: UpdateTarget,
  name: string,
): MergedSnapshot {
  const stored = current.events.find(({ id }) => id === target.eventId);
  if (stored === undefined) return { values: current, changes: [] };
  const machines = night.machines.flatMap((shared, place) =>
    machineUpdate(current, shared, target.machineIds[place]),
  );
  const events = night.machines.flatMap((shared, place): IncomingRecord<'events'>[] => {
    const machineId = target.machineIds[place];
    return machineId == null ? [] : [eventUpdate(stored, { night, shared, place, machineId })];
  });
  // One after the other: each speaks of the same event.
  return events.reduce<MergedSnapshot>(
    (before, event, place) => {
      const tables = { machines: place === 0 ? machines : [], events: [event] };
      const next = mergedSnapshot(before.values, { name, tables, setAside: before.values.setAside ?? [] });
      return { values: withFollowers(next, night, current), changes: [...before.changes, ...next.changes] };
    },
    { values: current, changes: [] },
  );
}

function machineUpdate(
  current: SnapshotValues,
  { id, trace = NO_TRACE, machine }: SharedMachine,
  machineId: string | null | undefined,
): readonly IncomingRecord<'machines'>[] {
  const here = current.machines.find((each) => each.id === machineId);
  if (here === undefined) return [];
  return [
    {
      id: here.id,
      value: { ...here.value, machine },
      trace: id === here.id ? trace : fromElsewhere(trace, id ?? ''),
      covers: (path) => path.startsWith('machine/') || path === 'proven',
    },
  ];
}

type About = {
  readonly night: SharedNight;
  readonly shared: SharedMachine;
  readonly place: number;
  readonly machineId: string;
};

function eventUpdate(
  here: { readonly id: string; readonly value: EventRecord },
  { night, shared, place, machineId }: About,
): IncomingRecord<'events'> {
  const { fitted, made, accepted, outFrom } = shared;
  const only = <V>(value: V | undefined): Record<string, V> =>
    value === undefined ? {} : { [machineId]: value };
  const same = night.id === here.id;
  const sameNight = isSameNight(here.value, night);
  const ownRuns = classOf(here.value, machineId) !== null;
  const { place: site, ...event } = here.value.event;
  const value: EventRecord = {
    ...here.value,
    event: { ...event, ...night.event, ...(site === undefined ? {} : { place: site }) },
    club: undefined,
    readings: night.readings,
    fitted: only(fitted),
    made: only(made),
    accepted: only(accepted),
    outFrom: only(outFrom),
  };
  const told = leavesOf('events', value);
  const parts = night.machines.map((_, i) => (i === place ? pathPart(machineId) : null));
  const trace = tracePlaced(night.trace ?? NO_TRACE, parts);
  return {
    id: here.id,
    value,
    trace: same ? trace : fromElsewhere(trace, night.id ?? ''),
    // A link leaves out what does not fit its plan, so what is not in it was not taken away.
    covers: (path) =>
      told.has(path) &&
      (/^(fitted|made|accepted|outFrom)\//.test(path) ||
        (path.startsWith('readings/') && sameNight) ||
        (same && path.startsWith('event/') && path !== 'event/place' && !(ownRuns && path === 'event/runs'))),
  };
}

const DAY_MS = 86_400_000;
/** Places go out rounded to a tenth of a degree. */
const SAME_PLACE_DEGREES = 0.11;

/** Readings count at the event only where they were taken there and then. */
function isSameNight({ event }: EventRecord, { event: there }: SharedNight): boolean {
  const [a, b] = [event.runs[0], there.runs[0]].map((run) => Date.parse(run?.start ?? ''));
  const far = (mine: number | undefined, theirs: number | undefined): boolean =>
    mine !== undefined && theirs !== undefined && Math.abs(mine - theirs) > SAME_PLACE_DEGREES;
  if (
    far(event.place?.latitude, there.place?.latitude) ||
    far(event.place?.longitude, there.place?.longitude)
  )
    return false;
  return a === undefined || b === undefined || !(Math.abs(a - b) > DAY_MS);
}

/** Counts of writes belong to one record: those of another are kept apart by its id. */
function fromElsewhere(trace: Trace, id: string): Trace {
  const tag = crc32(new TextEncoder().encode(id)).toString(16);
  return traceRenamed(trace, (by) => `${by}/${tag}`);
}

/** What follows from what came in: the baseline in force goes with its machine, and "it is in" has a time. */
function withFollowers(
  { values, changes }: MergedSnapshot,
  night: SharedNight,
  before: SnapshotValues,
): SnapshotValues {
  const machines = values.machines.map((entry) => {
    const was = before.machines.find(({ id }) => id === entry.id);
    return was === undefined || was.value === entry.value
      ? entry
      : { ...entry, value: recordWithMachine(was.value, entry.value.machine) };
  });
  const fitted = changes.flatMap(({ table, fields }) =>
    table === 'events' ? fields.filter(({ path, how }) => path.startsWith('fitted/') && how !== 'kept') : [],
  );
  const events = values.events.map((entry) => {
    if (!changes.some(({ id }) => id === entry.id) || fitted.length === 0) return entry;
    const fittings = Object.entries(entry.value.fitted)
      .filter(([id]) => fitted.some(({ path }) => path === `fitted/${pathPart(id)}`))
      .map(([id, setting]) => {
        const others = (entry.value.fittings?.[id] ?? []).filter(({ at }) => at !== night.sharedAt);
        return [
          id,
          [...others, { at: night.sharedAt, setting }].sort((a, b) => Date.parse(a.at) - Date.parse(b.at)),
        ] as const;
      });
    return {
      ...entry,
      value: { ...entry.value, fittings: { ...entry.value.fittings, ...Object.fromEntries(fittings) } },
    };
  });
  return { ...values, machines, events };
}
