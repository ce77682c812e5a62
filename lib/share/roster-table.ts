import * as z from 'zod/mini';
import { readBoxText, readSizes } from '@/lib/carb/box-text';
import { type MachineJson, machineSchema } from '@/lib/contract/machine';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import { bibText, isSeen, nameOrNone, withoutDirections } from '@/lib/contract/name-text';
import { parseWith } from '@/lib/contract/parse';
import type { RosterColumn, RosterLineProblem, RosterTableProblem } from '@/lib/contract/roster-problem';
import { fail, ok, type Result } from '@/lib/result/result';
import { cellOf, hasMoreCells } from '@/lib/table/columns';
import { linesBelow, readTable, type TableLimits, type TableLine } from '@/lib/table/read-table';
import type { UnitChoice } from '@/lib/units/choice';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { readElevation, readPressure, readTemperature } from '@/lib/units/entry';
import { takeApart } from '@/lib/units/entry-number';
import { withoutDust } from '@/lib/units/entry-text';
import { type RosterColumns, rosterColumns } from './roster-columns';
import { markingSaid, readDetails } from './roster-details';

/** One racer of a pasted table. */
export type RosterRow = {
  readonly line: number;
  readonly name: string;
  /** Empty where none was given. */
  readonly bib: string;
  /** Empty where none was named. */
  readonly className: string;
  /** The box it shares with others of that name; empty where the jets are its own. */
  readonly sharedBox: string;
  readonly machine: MachineJson;
};

/** A line that could not be understood, with its cells as they were pasted. */
export type BadRosterLine = { readonly line: number; readonly problem: RosterLineProblem };

export type RosterTable = {
  readonly rows: readonly RosterRow[];
  readonly bad: readonly BadRosterLine[];
  readonly ignored: readonly string[];
  /** Lines whose baseline was given neither elevation nor pressure, so that the event's elevation stands in. */
  readonly elevationAssumed: readonly number[];
};

export type RosterContext = {
  /** What bare numbers mean. */
  readonly units: UnitChoice;
  /** Of the event: where the baseline was proven, unless a line says otherwise. */
  readonly elevationM: number;
};

export const MOST_ROSTER_CHARACTERS = 200_000;
export const MOST_ROSTER_LINES = 200;
const LIMITS: TableLimits = {
  mostCharacters: MOST_ROSTER_CHARACTERS,
  mostLines: MOST_ROSTER_LINES,
  delimiters: ['\t', ';', '|', ','],
};

/** Reads a table of racers as it comes out of a spreadsheet, line by line; what one line lacks harms no other. */
export function readRosterTable(
  text: string,
  context: RosterContext,
): Result<RosterTable, RosterTableProblem> {
  const table = readTable(text, LIMITS);
  if (!table.ok) return table;
  const [first, ...rest] = table.value;
  if (first === undefined) return fail({ code: 'empty' });
  const columns = rosterColumns(first.cells);
  if (!columns.ok) return columns;
  const lines = linesBelow(columns.value.named ? rest : table.value, LIMITS);
  if (!lines.ok) return lines;
  const read = lines.value.map((line) => readLine({ ...line, columns: columns.value, context }));
  return ok({
    rows: read.flatMap((each) => (each.ok ? [each.value.row] : [])),
    bad: read.flatMap((each) => (each.ok ? [] : [each.reason])),
    ignored: columns.value.ignored,
    elevationAssumed: read.flatMap((each) => (each.ok && each.value.assumed ? [each.value.row.line] : [])),
  });
}

type Line = TableLine & {
  readonly columns: RosterColumns;
  readonly context: RosterContext;
};

type ReadLine = { readonly row: RosterRow; readonly assumed: boolean };

function readLine({ cells, line, columns, context }: Line): Result<ReadLine, BadRosterLine> {
  const bad = (problem: RosterLineProblem): Result<never, BadRosterLine> => fail({ line, problem });
  if (hasMoreCells(cells, columns)) return bad({ code: 'too-many-cells' });
  const text = (column: RosterColumn): string => cellOf(cells, columns, column).trim();
  const name = withoutDirections(text('name'));
  if (!isSeen(name)) return bad({ code: 'name-missing' });
  const bib = withoutDirections(text('bib'));
  if (bib !== '' && !bibText.safeParse(bib).success) return bad({ code: 'bib', text: bib.slice(0, 20) });
  const details = readDetails(text('details'));
  if (details === null) return bad({ code: 'details' });
  const mains = readSizes(text('mains'));
  if (!mains.ok) return bad({ code: 'mains', problem: mains.reason });
  // A file of ours says of a machine without jets that there are none.
  const noJets = text('box') === '' && columns.places.has('details');
  const box = noJets ? ok([]) : readBoxText(text('box'));
  if (!box.ok) return bad({ code: 'box', problem: box.reason });
  const marking = markingSaid(text('marking'), details.jetMarking);
  if (marking === null) return bad({ code: 'marking', text: text('marking') });
  const air = readAir({ text, columns, context });
  if (!air.ok) return bad(air.reason);
  const machine = parseWith(machineSchema, {
    ...details,
    name: isSeen(text('machine')) ? text('machine') : name,
    carburettors: mains.value.map((main) => ({ main })),
    jetMarking: marking,
    box: box.value,
    baseline: { ...details.baseline, air: { ...details.baseline?.air, ...air.value.air } },
  });
  if (!machine.ok) return bad({ code: 'machine', problems: machine.reason });
  const usable = machineFromJson(machine.value);
  if (!usable.ok) return bad({ code: 'machine', problems: usable.reason });
  const row = {
    line,
    name: name.slice(0, LONGEST_NAME),
    bib,
    className: z.catch(nameOrNone, '').parse(text('class').slice(0, LONGEST_NAME)),
    sharedBox: z.catch(nameOrNone, '').parse(text('shared box').slice(0, LONGEST_NAME)),
    machine: machine.value,
  };
  return ok({ row, assumed: air.value.assumed });
}

const LONGEST_NAME = 80;

type AirCells = Pick<Line, 'columns' | 'context'> & { readonly text: (column: RosterColumn) => string };
type BaselineAir = { readonly air: MachineJson['baseline']['air']; readonly assumed: boolean };

function readAir({ text, columns, context }: AirCells): Result<BaselineAir, RosterLineProblem> {
  const { units, elevationM } = context;
  /** The cell with the unit of its column's head, where it has none of its own. */
  const withUnit = (column: RosterColumn): string => {
    const unit = columns.units.get(column) ?? '';
    const cell = text(column);
    const entry = takeApart(cell);
    return unit === '' || (entry.ok && entry.value.unit !== '') ? cell : `${cell} ${unit}`;
  };
  const temperature = readTemperature(withUnit('temperature'), units.temperature);
  if (!temperature.ok) return fail({ code: 'temperature', problem: temperature.reason });
  const elevation = text('elevation') === '' ? null : readElevation(withUnit('elevation'), units.elevation);
  if (elevation?.ok === false) return fail({ code: 'elevation', problem: elevation.reason });
  const pressure =
    text('station pressure') === '' ? null : readPressure(withUnit('station pressure'), units.pressure);
  if (pressure?.ok === false) return fail({ code: 'station pressure', problem: pressure.reason });
  const assumed = elevation === null && pressure === null;
  return ok({
    air: {
      temperatureC: withoutDust(kelvinToCelsius(temperature.value)),
      ...(pressure === null ? {} : { pressureHpa: withoutDust(pascalToHectopascal(pressure.value)) }),
      ...(elevation === null ? {} : { elevationM: elevation.value }),
      ...(assumed ? { elevationM } : {}),
    },
    assumed,
  });
}
