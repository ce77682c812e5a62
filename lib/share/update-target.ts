import { racerName } from '@/lib/store/racer-event';
import type { EventRecord, MachineRecord, Stored } from '@/lib/store/records';
import type { UpdateTarget } from './night-update';
import type { SharedNight } from './shared-night';
import { sameName } from './told-apart';

/** Whose news a night is at an event, by the ids it came with. */
export function targetOf(
  { machines }: SharedNight,
  event: Pick<Stored<EventRecord>, 'id' | 'value'>,
): UpdateTarget {
  const onRoster = new Set(event.value.machineIds);
  return {
    eventId: event.id,
    machineIds: machines.map(({ id }) => (id !== undefined && onRoster.has(id) ? id : null)),
  };
}

/**
 * The same for a night of before ids travelled, or of a racer who was added from another one: by the name of the racer
 * or the machine, where just one on the roster has it. Only a person knows whether it is the same.
 */
export function targetByName(
  { machines }: SharedNight,
  event: Pick<Stored<EventRecord>, 'id' | 'value'>,
  known: readonly Pick<Stored<MachineRecord>, 'id' | 'value'>[],
): UpdateTarget {
  const roster = known.filter(({ id }) => event.value.machineIds.includes(id));
  return {
    eventId: event.id,
    machineIds: machines.map(({ machine }) => {
      const [first, ...others] = roster.filter(({ id, value }) =>
        [value.machine.name, racerName(event.value, id, value)].some(
          (name) => sameName(name) === sameName(machine.name),
        ),
      );
      return first !== undefined && others.length === 0 ? first.id : null;
    }),
  };
}
