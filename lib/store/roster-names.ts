import { racerName } from './racer-event';
import type { EventRecord, MachineRecord } from './records';
import { toldApart } from './told-apart';

type Entry = { readonly id: string; readonly value: MachineRecord };

const LONGEST_NAME = 80;

/** "#14 Ilsa Vorn"; the name alone for who has no bib. */
export function withBib(name: string, bib: string | undefined): string {
  return bib === undefined ? name : `#${bib} ${name}`.slice(0, LONGEST_NAME);
}

/** What everybody on the roster is called in a list: bib and name, and no two alike. By machine id. */
export function rosterNames(record: EventRecord, machines: readonly Entry[]): ReadonlyMap<string, string> {
  const racers = machines.filter(({ id }) => record.machineIds.includes(id));
  const names = racers.map(({ id, value }) =>
    withBib(racerName(record, id, value), record.club?.racers[id]?.bib),
  );
  const apart = toldApart(names);
  return new Map(racers.map(({ id }, i) => [id, apart[i] ?? '']));
}

/** Machines of this browser by their names, no two alike. By id. */
export function machineNames(machines: readonly Entry[]): ReadonlyMap<string, string> {
  const apart = toldApart(machines.map(({ value }) => value.machine.name));
  return new Map(machines.map(({ id }, i) => [id, apart[i] ?? '']));
}
