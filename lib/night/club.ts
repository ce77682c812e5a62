import type { ClubNight, ClubRacer } from '@/lib/club/racer';
import type { ContractProblem } from '@/lib/contract/problem';
import type { PlaceOffset } from '@/lib/plan/place-offset';
import { racerName } from '@/lib/store/racer-event';
import type {
  BoxRecord,
  EventRecord,
  ForecastRecord,
  LogRecord,
  MachineRecord,
  Stored,
} from '@/lib/store/records';
import { weatherOfEvent } from './chosen';
import { eventRequest } from './event-request';
import { hoursOfNight } from './hours-of-night';
import { machineRequest } from './machine-request';
import { logOf, type NightRecords } from './night';

/** What the store holds about an event and everybody who takes part. */
export type ClubRecords = {
  readonly event: Stored<EventRecord>;
  /** In the order of the roster. */
  readonly machines: readonly Stored<MachineRecord>[];
  readonly boxes: readonly Stored<BoxRecord>[];
  readonly forecast: ForecastRecord | null;
  readonly log: readonly Stored<LogRecord>[];
  /** What past nights at the place taught. Absent: nothing. */
  readonly placeOffset?: PlaceOffset;
};

type ClubTables = {
  readonly events: readonly Stored<EventRecord>[];
  readonly machines: readonly Stored<MachineRecord>[];
  readonly boxes: readonly Stored<BoxRecord>[];
  readonly forecasts: readonly Stored<ForecastRecord>[];
  readonly log: readonly Stored<LogRecord>[];
};

/** What all tables together hold about an event and everybody who takes part. */
export function clubRecordsOf(event: Stored<EventRecord>, tables: ClubTables): ClubRecords {
  const { machines, boxes, log } = tables;
  const byId = new Map(machines.map((machine) => [machine.id, machine]));
  const taking = event.value.machineIds.flatMap((id) => byId.get(id) ?? []);
  return { event, machines: taking, boxes, log, ...weatherOfEvent(event, tables) };
}

/** What the store holds about one racer, as a night of one; null where the racer is not among them. */
export function recordsOf(
  { event, machines, boxes, forecast, log, placeOffset }: ClubRecords,
  id: string,
): NightRecords | null {
  const machine = machines.find((each) => each.id === id);
  if (machine === undefined) return null;
  const box = boxes.find((each) => each.id === machine.value.boxId)?.value ?? null;
  const own = { event, machine, box, forecast, log: logOf(log, event, id) };
  return placeOffset === undefined ? own : { ...own, placeOffset };
}

/** Every racer of an event as a night of one, in the order of the roster. */
export function nightsOf(records: ClubRecords): readonly NightRecords[] {
  return records.machines.flatMap(({ id }) => recordsOf(records, id) ?? []);
}

/** A racer whose machine cannot be planned as it is stored. */
export type BrokenRacer = {
  readonly id: string;
  readonly name: string;
  readonly problems: readonly ContractProblem[];
};

/** Why nobody can be planned; `no-hours` where none were given. */
export type ClubProblem =
  | { readonly code: 'no-hours' }
  | { readonly code: 'hours'; readonly problems: readonly ContractProblem[] };

/** The club's night in the core's own terms. */
export type Club = {
  readonly racers: readonly ClubRacer[];
  readonly broken: readonly BrokenRacer[];
  readonly night: Omit<ClubNight, 'now'> | null;
  readonly problem: ClubProblem | null;
};

/** Reads the records racer by racer; yields after each, so that a page can go on answering its reader. */
export function* clubSteps(records: ClubRecords): Generator<void, Club> {
  const racers: ClubRacer[] = [];
  const broken: BrokenRacer[] = [];
  for (const machine of records.machines) {
    const read = racerFrom(records, machine);
    if ('machine' in read) racers.push(read);
    else broken.push(read);
    yield;
  }
  return { racers, broken, ...nightOf(records) };
}

function nightOf({ event: { value }, forecast, placeOffset }: ClubRecords): Pick<Club, 'night' | 'problem'> {
  const series = hoursOfNight(value, forecast);
  if (series === null) return { night: null, problem: { code: 'no-hours' } };
  if (!series.ok) return { night: null, problem: { code: 'hours', problems: series.reason } };
  return { night: { series: series.value, ...eventRequest(value, placeOffset) }, problem: null };
}

function racerFrom(
  { event, boxes, log }: ClubRecords,
  machine: Stored<MachineRecord>,
): ClubRacer | BrokenRacer {
  const { id, value } = machine;
  const name = racerName(event.value, id, value);
  const box = boxes.find((each) => each.id === value.boxId) ?? null;
  const own = machineRequest({ event, machine, box: box?.value ?? null, log: logOf(log, event, id) });
  return own.ok ? { id, name, boxId: box?.id ?? id, ...own.value } : { id, name, problems: own.reason };
}
