import { boxText } from '@/lib/carb/box-text';
import type { MachineJson } from '@/lib/contract/machine';
import type { ClubRecords } from '@/lib/night/club';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import { classOf, racerName } from '@/lib/store/racer-event';
import type { EventRecord } from '@/lib/store/records';
import { toCell } from '@/lib/table/cell';
import { writeTable } from '@/lib/table/write-table';
import { detailsCell } from './roster-details';

type RosterLine = {
  readonly bib: string;
  readonly name: string;
  readonly className: string;
  readonly sharedBox: string;
  readonly machine: MachineJson;
};

type Cell = string | number;
type CsvColumn = { readonly head: string; readonly cell: (line: RosterLine) => Cell };

/** As the reader of rosters knows them, each with its unit. */
const COLUMNS: readonly CsvColumn[] = [
  { head: 'Bib', cell: ({ bib }) => bib },
  { head: 'Racer', cell: ({ name }) => name },
  { head: 'Machine', cell: ({ machine }) => machine.name },
  { head: 'Class', cell: ({ className }) => className },
  { head: 'Mains', cell: ({ machine }) => machine.carburettors.map(({ main }) => main).join('/') },
  { head: 'Box', cell: ({ machine }) => boxText(machine.box) },
  { head: 'Shared box', cell: ({ sharedBox }) => sharedBox },
  {
    head: 'Marking',
    cell: ({ machine: { jetMarking } }) => (typeof jetMarking === 'string' ? jetMarking : 'list'),
  },
  { head: 'Temperature (C)', cell: ({ machine }) => machine.baseline.air.temperatureC },
  { head: 'Elevation (m)', cell: ({ machine }) => machine.baseline.air.elevationM ?? '' },
  { head: 'Station pressure (hPa)', cell: ({ machine }) => machine.baseline.air.pressureHpa ?? '' },
  { head: 'Details', cell: ({ machine }) => detailsCell(machine) },
];

/**
 * The roster as a table: what `readRosterTable` makes of it is what went out, in whatever units the reader has chosen.
 * What was done at the event stays here; the file is who, with what. UTF-8 marked for spreadsheets.
 */
export function rosterCsv({ event, machines, boxes }: ClubRecords): string {
  const lines = machines.map(({ id, value }): RosterLine => {
    const shared = boxes.find((box) => box.id === value.boxId)?.value ?? null;
    const machine = machineWithBaseline(value);
    return {
      bib: event.value.club?.racers[id]?.bib ?? '',
      name: racerName(event.value, id, value),
      className: classOf(event.value, id)?.name ?? '',
      sharedBox: shared === null ? '' : sharedName(shared.name, event.value, machines, value.boxId),
      machine: shared === null ? machine : { ...machine, box: shared.entries },
    };
  });
  const cells = lines.map((line) =>
    COLUMNS.map(({ cell }) => {
      const value = cell(line);
      return typeof value === 'string' ? toCell(value) : value;
    }),
  );
  return `\uFEFF${writeTable(
    COLUMNS.map(({ head }) => head),
    cells,
  )}`;
}

/** A box without a name is told apart by the first who takes from it. */
function sharedName(
  name: string,
  event: EventRecord,
  machines: ClubRecords['machines'],
  boxId: string | null,
): string {
  if (name !== '') return name;
  const first = machines.find(({ value }) => value.boxId === boxId);
  return first === undefined ? '' : `Box of ${racerName(event, first.id, first.value)}`;
}
