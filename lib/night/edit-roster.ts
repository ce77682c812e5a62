import type { SettingJson } from '@/lib/contract/event';
import type { ClubClass, ClubRecord, EventRecord } from '@/lib/store/records';
import { withRenumberedRuns } from './record-with-event';

const NOBODY: ClubRecord = { classes: [], racers: {} };

type Racer = ClubRecord['racers'][string];
const PLAIN: Racer = { name: '', classId: null };

/** Somebody who joins the roster; what is told about runs counts those of the class. */
export type Joining = {
  readonly machineId: string;
  readonly name: string;
  readonly bib?: string | undefined;
  readonly classId: string | null;
  readonly fitted?: SettingJson | undefined;
  readonly accepted?: SettingJson[] | undefined;
  readonly made?: EventRecord['made'][string] | undefined;
};

/** The event with more machines in it; who is in already stays as he is. An invented event becomes one's own. */
export function withJoined(record: EventRecord, joining: readonly Joining[]): EventRecord {
  return joining
    .filter(({ machineId }) => !record.machineIds.includes(machineId))
    .reduce(withOne, { ...record, demo: false });
}

function withOne(record: EventRecord, joining: Joining): EventRecord {
  const { machineId, name, bib, classId, fitted, accepted, made } = joining;
  const named = withRacer({ ...record, machineIds: [...record.machineIds, machineId] }, machineId, {
    name,
    ...(bib === undefined ? {} : { bib }),
    classId,
  });
  return {
    ...named,
    fitted: fitted === undefined ? named.fitted : { ...named.fitted, [machineId]: fitted },
    accepted: accepted === undefined ? named.accepted : { ...named.accepted, [machineId]: accepted },
    made: made === undefined ? named.made : { ...named.made, [machineId]: made },
  };
}

/** The event without one machine. What was said about its night goes with it; the machine itself stays in the store. */
export function withoutRacer(record: EventRecord, machineId: string): EventRecord {
  const drop = <V>(all: Record<string, V>): Record<string, V> => {
    const { [machineId]: _, ...others } = all;
    return others;
  };
  return {
    ...record,
    machineIds: record.machineIds.filter((id) => id !== machineId),
    fitted: drop(record.fitted),
    accepted: drop(record.accepted),
    made: drop(record.made),
    ...(record.acceptedAir === undefined ? {} : { acceptedAir: drop(record.acceptedAir) }),
    ...(record.planned === undefined ? {} : { planned: drop(record.planned) }),
    ...(record.club === undefined ? {} : { club: { ...record.club, racers: drop(record.club.racers) } }),
  };
}

export function withRacer(record: EventRecord, machineId: string, change: Partial<Racer>): EventRecord {
  const club = record.club ?? NOBODY;
  const racers = { ...club.racers, [machineId]: { ...(club.racers[machineId] ?? PLAIN), ...change } };
  return { ...record, club: { ...club, racers } };
}

/** The event with what a racer is called there; without a number the old one goes. */
export function withCalled(
  record: EventRecord,
  machineId: string,
  { name, bib }: { readonly name: string; readonly bib: string | undefined },
): EventRecord {
  const { bib: _, ...before } = record.club?.racers[machineId] ?? PLAIN;
  const club = record.club ?? NOBODY;
  const called = { ...before, name, ...(bib === undefined ? {} : { bib }) };
  return { ...record, club: { ...club, racers: { ...club.racers, [machineId]: called } } };
}

/** A racer in another class has other runs, so what was said about the old ones is dropped. */
export function withClassOf(record: EventRecord, machineId: string, classId: string | null): EventRecord {
  if ((record.club?.racers[machineId]?.classId ?? null) === classId) return record;
  return withRacer(
    withRenumberedRuns(record, [], (id) => id === machineId),
    machineId,
    { classId },
  );
}

/** The event with a class added, or changed; `from` says for each of its runs which one it was. */
export function withClass(
  record: EventRecord,
  changed: ClubClass,
  from: readonly (number | null)[],
): EventRecord {
  const club = record.club ?? NOBODY;
  const known = club.classes.some(({ id }) => id === changed.id);
  const classes = known
    ? club.classes.map((each) => (each.id === changed.id ? changed : each))
    : [...club.classes, changed];
  const concerns = (id: string): boolean => known && club.racers[id]?.classId === changed.id;
  return { ...withRenumberedRuns(record, from, concerns), club: { ...club, classes } };
}

/** The event without a class; its racers run when everybody does. */
export function withoutClass(record: EventRecord, classId: string): EventRecord {
  const { club } = record;
  if (club === undefined) return record;
  const moved = Object.keys(club.racers)
    .filter((id) => club.racers[id]?.classId === classId)
    .reduce((before, id) => withClassOf(before, id, null), record);
  const classes = club.classes.filter(({ id }) => id !== classId);
  return { ...moved, club: { ...(moved.club ?? NOBODY), classes } };
}

/** The class of a name, whatever its case; null where there is none. */
export function classCalled({ club }: EventRecord, name: string): ClubClass | null {
  const wanted = name.trim().toLowerCase();
  return club?.classes.find((each) => each.name.trim().toLowerCase() === wanted) ?? null;
}
