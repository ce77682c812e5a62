import { readSizes } from '@/lib/carb/box-text';
import { airFromJson } from '@/lib/contract/air-from-json';
import type { LogCsvProblem } from '@/lib/contract/log-csv-problem';
import { parseWith } from '@/lib/contract/parse';
import type { ContractReason } from '@/lib/contract/problem';
import { fail, ok, type Result } from '@/lib/result/result';
import { type LogRecord, logRecordSchema } from '@/lib/store/records';
import { cellOf, findHeads, hasMoreCells, headsOf, type TableColumns } from '@/lib/table/columns';
import { linesBelow, readTable, type TableLimits, type TableLine } from '@/lib/table/read-table';
import { readNumber } from '@/lib/units/entry';
import { readCylinders } from './cylinder-cell';
import { LOG_COLUMNS } from './log-csv-columns';

/** An entry read from a file; `id` null where the file gave none. */
export type ReadLogEntry = { readonly id: string | null; readonly value: LogRecord };

export type ReadLog = {
  readonly entries: readonly ReadLogEntry[];
  /** Columns nobody here knows; they were left aside. */
  readonly ignored: readonly string[];
};

export type KnownMachine = { readonly id: string; readonly name: string };

export const MOST_CSV_CHARACTERS = 5_000_000;
export const MOST_CSV_LINES = 20_000;
const LIMITS: TableLimits = {
  mostCharacters: MOST_CSV_CHARACTERS,
  mostLines: MOST_CSV_LINES,
  delimiters: [',', ';', '\t'],
};
/** A file that is wrong in every line is wrong for one reason. */
const MOST_PROBLEMS = 20;
const LONGEST_ID = 64;

/** Reads a table of runs. Every line must be understood, or none is taken. */
export function readLogCsv(
  text: string,
  machines: readonly KnownMachine[],
): Result<ReadLog, readonly LogCsvProblem[]> {
  const table = readTable(text, LIMITS);
  if (!table.ok) return fail([table.reason]);
  const [head, ...rest] = table.value;
  const lines = linesBelow(rest, LIMITS);
  if (!lines.ok) return fail([lines.reason]);
  const columns = findHeads(headsOf(head?.cells ?? []), { needed: NEEDED, columnOf });
  if (!columns.ok) return fail([columns.reason]);
  const read = lines.value.map((line) => readLine({ ...line, columns: columns.value, machines }));
  const problems = [...read.flatMap((entry) => (entry.ok ? [] : entry.reason)), ...repeatedIds(read)];
  if (problems.length > 0) return fail(problems.slice(0, MOST_PROBLEMS));
  const { ignored } = columns.value;
  return ok({ entries: read.flatMap((entry) => (entry.ok ? [entry.value] : [])), ignored });
}

const KNOWN: ReadonlySet<string> = new Set(LOG_COLUMNS.map(({ name }) => name));
const NEEDED = LOG_COLUMNS.filter(({ needed }) => needed).map(({ name }) => name);

function columnOf(head: string): string | null {
  const name = head.toLowerCase();
  return KNOWN.has(name) ? name : null;
}

type Line = TableLine & {
  readonly columns: TableColumns<string>;
  readonly machines: readonly KnownMachine[];
};

function readLine(given: Line): Result<ReadLogEntry, readonly LogCsvProblem[]> {
  const { cells, line, columns, machines } = given;
  if (hasMoreCells(cells, columns)) return fail([{ code: 'too-many-cells', line }]);
  const problems: LogCsvProblem[] = [];
  const text = (name: string): string => cellOf(cells, columns, name);
  const number = (name: string): number | undefined => {
    const typed = text(name).trim();
    if (typed === '') return undefined;
    const value = readNumber(typed);
    if (!value.ok) problems.push({ code: 'not-a-number', line, column: name, text: typed.slice(0, 40) });
    return value.ok ? value.value : undefined;
  };
  const machine = machineOf({ line, id: text('machine_id').trim(), name: text('machine').trim(), machines });
  const candidate = candidateOf(text, number);
  const { verdict, sizes, setting } = candidate;
  const cylinders = readCylinders({
    text: text('verdict_by_cylinder'),
    ...{ line, verdict, sizes, mains: setting.mains.length },
  });
  if (!cylinders.ok) problems.push(cylinders.reason);
  if (!machine.ok) return fail([...problems, machine.reason]);
  const record = parseWith(logRecordSchema, {
    machineId: machine.value,
    ...candidate,
    ...(cylinders.ok ? cylinders.value : {}),
  });
  if (!record.ok) problems.push(...record.reason.map(({ path, reason }) => badValue(line, path, reason)));
  const air = record.ok ? airFromJson(record.value.air, ['air']) : null;
  if (air !== null && !air.ok)
    problems.push(...air.reason.map(({ path, reason }) => badValue(line, path, reason)));
  if (!record.ok || problems.length > 0) return fail(problems);
  const id = text('id').trim();
  return ok({ id: id === '' || id.length > LONGEST_ID ? null : id, value: record.value });
}

function candidateOf(text: (name: string) => string, number: (name: string) => number | undefined) {
  const mains = readSizes(text('mains'));
  const word = (name: string): string | null => text(name).trim().toLowerCase() || null;
  return {
    eventId: text('event_id').trim() || null,
    run: text('run').trim(),
    at: text('time').trim(),
    // What cannot be read is no number, for the schema to refuse.
    setting: { mains: mains.ok ? mains.value : [Number.NaN], trim: number('trim') ?? null },
    verdict: word('verdict'),
    sizes: number('sizes') ?? null,
    judgedBy: word('judged_by'),
    seconds: number('seconds') ?? null,
    speedKmh: number('speed_kmh') ?? null,
    note: text('note'),
    air: {
      temperatureC: number('temperature_c'),
      pressureHpa: number('station_pressure_hpa'),
      altimeterHpa: number('altimeter_hpa'),
      seaLevelHpa: number('sea_level_hpa'),
      elevationM: number('elevation_m'),
      relativeHumidity: number('relative_humidity'),
      dewPointC: number('dew_point_c'),
      frostPointC: number('frost_point_c'),
    },
  };
}

function machineOf(given: {
  readonly line: number;
  readonly id: string;
  readonly name: string;
  readonly machines: readonly KnownMachine[];
}): Result<string, LogCsvProblem> {
  const { line, id, name, machines } = given;
  if (machines.some((machine) => machine.id === id)) return ok(id);
  const named = machines.filter((machine) => machine.name.trim().toLowerCase() === name.toLowerCase());
  const [only, other] = named;
  if (only === undefined) return fail({ code: 'unknown-machine', line, machine: name.slice(0, 80) });
  return other === undefined
    ? ok(only.id)
    : fail({ code: 'which-machine', line, machine: name.slice(0, 80) });
}

const COLUMN_OF: Readonly<Record<string, string>> = {
  at: 'time',
  setting: 'mains',
  judgedBy: 'judged_by',
  speedKmh: 'speed_kmh',
  eventId: 'event_id',
  temperatureC: 'temperature_c',
  pressureHpa: 'station_pressure_hpa',
  altimeterHpa: 'altimeter_hpa',
  seaLevelHpa: 'sea_level_hpa',
  elevationM: 'elevation_m',
  relativeHumidity: 'relative_humidity',
  dewPointC: 'dew_point_c',
  frostPointC: 'frost_point_c',
};

function badValue(line: number, path: readonly (string | number)[], reason: ContractReason): LogCsvProblem {
  const [head, second] = path;
  const field = head === 'air' ? second : head === 'setting' && second === 'trim' ? second : head;
  const name = String(field ?? 'air');
  return {
    code: 'bad-value',
    line,
    column: Object.hasOwn(COLUMN_OF, name) ? (COLUMN_OF[name] ?? name) : name,
    reason,
  };
}

function repeatedIds(read: readonly Result<ReadLogEntry, unknown>[]): readonly LogCsvProblem[] {
  const seen = new Set<string>();
  return read.flatMap((entry, i): readonly LogCsvProblem[] => {
    if (!entry.ok || entry.value.id === null) return [];
    const { id } = entry.value;
    if (seen.has(id)) return [{ code: 'id-twice', line: i + 2, id }];
    seen.add(id);
    return [];
  });
}
