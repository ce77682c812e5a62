import type { ClubClass, EventRecord } from '@/lib/store/records';
import { classCalled, withClass, withJoined } from './edit-roster';

/**
 * The event with everybody of another one who is not here yet, called and numbered as there. Classes come by name, with
 * the runs of this event until theirs are set; what was done there stays there.
 */
export function withTakenAlong(record: EventRecord, from: EventRecord, newId: () => string): EventRecord {
  const newcomers = from.machineIds.filter((id) => !record.machineIds.includes(id));
  return newcomers.reduce<EventRecord>((before, machineId) => {
    const { name = '', bib, classId = null } = from.club?.racers[machineId] ?? {};
    const there = from.club?.classes.find(({ id }) => id === classId) ?? null;
    const [event, own] = there === null ? [before, null] : inClassCalled(before, there.name, newId);
    return withJoined(event, [{ machineId, name, bib, classId: own }]);
  }, record);
}

function inClassCalled(record: EventRecord, name: string, newId: () => string): [EventRecord, string] {
  const known = classCalled(record, name);
  if (known !== null) return [record, known.id];
  const added: ClubClass = { id: newId(), name, runs: record.event.runs };
  return [withClass(record, added, []), added.id];
}
