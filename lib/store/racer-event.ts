import type { EventJson } from '@/lib/contract/event';
import type { ClubClass, EventRecord, MachineRecord } from './records';

/** The class a racer runs in; null for who runs when everybody does. */
export function classOf({ club }: Pick<EventRecord, 'club'>, machineId: string): ClubClass | null {
  const classId = club?.racers[machineId]?.classId ?? null;
  return club?.classes.find(({ id }) => id === classId) ?? null;
}

/** The event as one racer knows it: with the runs of the racer's own class. */
export function eventOfRacer(record: EventRecord, machineId: string): EventJson {
  const own = classOf(record, machineId);
  return own === null ? record.event : { ...record.event, runs: own.runs };
}

/** What a racer is called at the event: the name given there, else the machine's. */
export function racerName(record: EventRecord, machineId: string, machine: MachineRecord): string {
  const name = record.club?.racers[machineId]?.name ?? '';
  return name === '' ? machine.machine.name : name;
}
