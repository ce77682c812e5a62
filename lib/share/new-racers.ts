import type { RunJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { MachineJson } from '@/lib/contract/machine';
import { classCalled, type Joining, withClass, withJoined } from '@/lib/night/edit-roster';
import { withNightUpdate } from '@/lib/share/night-update';
import type { RosterRow } from '@/lib/share/roster-table';
import type { SharedNight } from '@/lib/share/shared-night';
import { sameName, toldApart } from '@/lib/share/told-apart';
import { newMachineRecord } from '@/lib/store/new-machine-record';
import { racerName } from '@/lib/store/racer-event';
import type { ClubClass, EventRecord, MachineRecord } from '@/lib/store/records';
import { sameValue } from '@/lib/store/same-value';
import type { Snapshot, SnapshotValues } from '@/lib/store/store-type';
import type { Trace } from '@/lib/store/trace-schema';

/** Most machines an event holds. */
export const MOST_RACERS = 100;

/** When a newcomer runs: with everybody, with a class by its name, or at times that were handed over. */
type Runs =
  | { readonly kind: 'everybody' }
  | { readonly kind: 'class'; readonly name: string }
  | { readonly kind: 'own'; readonly runs: readonly RunJson[] };

/** Somebody who is not in this browser yet. */
export type NewRacer = Pick<Joining, 'fitted' | 'accepted' | 'made'> & {
  /** Empty where the machine's name says enough. */
  readonly name: string;
  readonly machine: MachineJson;
  readonly when: Runs;
  /** Where somebody shared it as a racer of an own, known by an id: what was said there is merged in. */
  readonly origin?: { readonly id: string; readonly night: SharedNight };
};

export function racerOfRow({ name, className, machine }: RosterRow): NewRacer {
  return {
    name: machine.name === name ? '' : name,
    machine,
    when: className === '' ? { kind: 'everybody' } : { kind: 'class', name: className },
  };
}

export function racersOfNight(night: SharedNight): readonly NewRacer[] {
  return night.machines.map(({ id, machine, fitted, accepted, made }) => {
    const racer = { name: '', machine, when: { kind: 'own', runs: night.event.runs } } as const;
    return id === undefined ? { ...racer, fitted, accepted, made } : { ...racer, origin: { id, night } };
  });
}

/** Of several links of one racer the one that knows most: it has all that the others say. */
export function withoutOlder(racers: readonly NewRacer[]): readonly NewRacer[] {
  const writes = ({ origin }: NewRacer): number =>
    Object.values(origin?.night.trace?.seen ?? {}).reduce((sum, at) => sum + at, 0);
  return racers.filter(
    (racer, i) =>
      racer.origin === undefined ||
      racers.every(
        (other, k) =>
          k === i ||
          other.origin?.id !== racer.origin?.id ||
          writes(other) < writes(racer) ||
          (writes(other) === writes(racer) && k > i),
      ),
  );
}

type Entry<V> = { readonly id: string; readonly value: V; readonly trace?: Trace };
type Here = { readonly machines: readonly Entry<MachineRecord>[]; readonly event: EventRecord };

export type WithRacers = {
  /** Only the new ones. */
  readonly machines: readonly Entry<MachineRecord>[];
  readonly event: EventRecord;
};

/** What a newcomer is called. */
export const calledOf = ({ name, machine }: NewRacer): string => (name === '' ? machine.name : name);

/**
 * The event with newcomers on its roster, and the machines to keep for them. Every newcomer becomes a racer, also where
 * several ride the same machine number for number, as in a stock class; names that are the same are told apart. Nothing
 * that is there is changed: a machine in this browser that is not on the roster, and the same, is taken as it is.
 */
export function withNewRacers(here: Here, racers: readonly NewRacer[], newId: () => string): WithRacers {
  const apart = toldApart(racers.map(calledOf), rosterNames(here));
  return racers.reduce<WithRacers>(
    (before, racer, i) => {
      const { name, machine } = withName(racer, apart[i] ?? calledOf(racer));
      const { origin } = racer;
      const known = here.machines.find(({ id, value }) =>
        origin === undefined
          ? !before.event.machineIds.includes(id) && sameValue(value.machine, machine)
          : id === origin.id,
      );
      const machineId = known?.id ?? origin?.id ?? newId();
      const trace = origin?.night.machines.find(({ id }) => id === origin.id)?.trace;
      const placed = placeInClass(before.event, racer, newId);
      const { fitted, accepted, made } = racer;
      return {
        machines:
          known === undefined
            ? [
                ...before.machines,
                { id: machineId, value: newMachineRecord(machine), ...(trace && { trace }) },
              ]
            : before.machines,
        event: withJoined(placed.event, [
          { machineId, name, classId: placed.classId, fitted, accepted, made },
        ]),
      };
    },
    { machines: [], event: here.event },
  );
}

type Adding = {
  readonly eventId: string;
  readonly racers: readonly NewRacer[];
  readonly newId: () => string;
};

/** With the newcomers, or why they cannot come. */
export function withRacersAdded(
  current: Snapshot,
  { eventId, racers, newId }: Adding,
): SnapshotValues | string {
  const stored = current.events.find(({ id }) => id === eventId);
  if (stored === undefined) return 'They were not added: the event was removed meanwhile. Look again.';
  if (stored.value.machineIds.length + racers.length > MOST_RACERS)
    return `An event holds ${MOST_RACERS} racers. Take some off the roster, or start another event.`;
  const { machines, event } = withNewRacers(
    { machines: current.machines, event: stored.value },
    racers,
    newId,
  );
  const joined: SnapshotValues = {
    ...current,
    machines: [...current.machines, ...machines],
    events: current.events.map((each) =>
      each.id === eventId ? { id: eventId, value: event, ...(each.trace && { trace: each.trace }) } : each,
    ),
  };
  return racers.reduce((before, { origin, name, machine }) => {
    if (origin === undefined) return before;
    const machineIds = origin.night.machines.map(({ id }) => (id === origin.id ? id : null));
    return withNightUpdate(before, origin.night, { eventId, machineIds }, name || machine.name).values;
  }, joined);
}

/** A machine that goes by its racer's name takes the number along; one with a name of its own, or shared, keeps it. */
function withName(racer: NewRacer, apart: string): Pick<NewRacer, 'name' | 'machine'> {
  const { name, machine, when } = racer;
  if (apart === calledOf(racer)) return { name, machine };
  return name === '' && when.kind !== 'own'
    ? { name, machine: { ...machine, name: apart } }
    : { name: apart, machine };
}

function rosterNames({ event, machines }: Here): readonly string[] {
  return machines.flatMap(({ id, value }) =>
    event.machineIds.includes(id) ? [racerName(event, id, value)] : [],
  );
}

/**
 * Which newcomers look like somebody who is there already, so that a table pasted again, or a night sent again, is asked
 * about: by the name they would have had if the roster were empty; a machine that somebody shared, also by being the
 * same as one on the roster or shared before it.
 */
export function repeatsOf(here: Here, racers: readonly NewRacer[]): readonly boolean[] {
  const names = new Set(rosterNames(here).map(sameName));
  const machines = here.machines.flatMap(({ id, value }) =>
    here.event.machineIds.includes(id) ? [value.machine] : [],
  );
  const alone = toldApart(racers.map(calledOf));
  return racers.map(({ when, machine }, i) => {
    if (names.has(sameName(alone[i] ?? ''))) return true;
    const sharedBefore = racers
      .slice(0, i)
      .flatMap((each) => (each.when.kind === 'own' ? [each.machine] : []));
    return when.kind === 'own' && [...machines, ...sharedBefore].some((each) => sameValue(each, machine));
  });
}

type Placed = { readonly event: EventRecord; readonly classId: string | null };

function placeInClass(event: EventRecord, racer: NewRacer, newId: () => string): Placed {
  const { when } = racer;
  if (when.kind === 'everybody') return { event, classId: null };
  if (when.kind === 'class') {
    const known = classCalled(event, when.name);
    if (known !== null) return { event, classId: known.id };
    return withNewClass(event, { id: newId(), name: when.name, runs: event.event.runs });
  }
  if (sameRuns(when.runs, event.event.runs)) return { event, classId: null };
  const like = event.club?.classes.find(({ runs }) => sameRuns(runs, when.runs));
  if (like !== undefined) return { event, classId: like.id };
  return withNewClass(event, { id: newId(), name: calledOf(racer), runs: [...when.runs] });
}

function withNewClass(event: EventRecord, added: ClubClass): Placed {
  return { event: withClass(event, added, []), classId: added.id };
}

/** The same moments, whatever the runs are called and whichever offset they are written with. */
function sameRuns(a: readonly RunJson[], b: readonly RunJson[]): boolean {
  const moments = (runs: readonly RunJson[]) =>
    runs.map(({ start, end }) => `${instantFromJson(start)} ${instantFromJson(end)}`).join();
  return moments(a) === moments(b);
}
