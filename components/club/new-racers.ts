import { newMachineRecord } from '@/components/machine/record-with-machine';
import type { RunJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { MachineJson } from '@/lib/contract/machine';
import type { RosterRow } from '@/lib/share/roster-table';
import type { SharedNight } from '@/lib/share/shared-night';
import type { ClubClass, EventRecord, MachineRecord } from '@/lib/store/records';
import { sameValue } from '@/lib/store/same-value';
import { classCalled, type Joining, withClass, withJoined } from './edit-roster';

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
};

export function racerOfRow({ name, className, machine }: RosterRow): NewRacer {
  return {
    name: machine.name === name ? '' : name,
    machine,
    when: className === '' ? { kind: 'everybody' } : { kind: 'class', name: className },
  };
}

export function racersOfNight({ event, machines }: SharedNight): readonly NewRacer[] {
  return machines.map(({ machine, fitted, accepted, made }) => ({
    name: '',
    machine,
    when: { kind: 'own', runs: event.runs },
    fitted,
    accepted,
    made,
  }));
}

type Entry<V> = { readonly id: string; readonly value: V };
type Here = { readonly machines: readonly Entry<MachineRecord>[]; readonly event: EventRecord };

export type WithRacers = {
  /** Only the new ones. */
  readonly machines: readonly Entry<MachineRecord>[];
  readonly event: EventRecord;
};

/**
 * The event with newcomers on its roster, and the machines to keep for them. Nothing that is there is changed: a
 * machine that is here already, number for number, is taken as it is; one that differs comes in beside it.
 */
export function withNewRacers(here: Here, racers: readonly NewRacer[], newId: () => string): WithRacers {
  return racers.reduce<WithRacers>(
    (before, racer) => {
      const known = [...here.machines, ...before.machines].find(({ value }) =>
        sameValue(value.machine, racer.machine),
      );
      const machineId = known?.id ?? newId();
      const placed = placeInClass(before.event, racer, newId);
      const { name, fitted, accepted, made } = racer;
      return {
        machines:
          known === undefined
            ? [...before.machines, { id: machineId, value: newMachineRecord(racer.machine) }]
            : before.machines,
        event: withJoined(placed.event, [
          { machineId, name, classId: placed.classId, fitted, accepted, made },
        ]),
      };
    },
    { machines: [], event: here.event },
  );
}

type Placed = { readonly event: EventRecord; readonly classId: string | null };

function placeInClass(event: EventRecord, { when, machine, name }: NewRacer, newId: () => string): Placed {
  if (when.kind === 'everybody') return { event, classId: null };
  if (when.kind === 'class') {
    const known = classCalled(event, when.name);
    if (known !== null) return { event, classId: known.id };
    return withNewClass(event, { id: newId(), name: when.name, runs: event.event.runs });
  }
  if (sameRuns(when.runs, event.event.runs)) return { event, classId: null };
  const like = event.club?.classes.find(({ runs }) => sameRuns(runs, when.runs));
  if (like !== undefined) return { event, classId: like.id };
  const called = name === '' ? machine.name : name;
  return withNewClass(event, { id: newId(), name: called, runs: [...when.runs] });
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
