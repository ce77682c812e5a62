import type { RosterColumn } from '@/lib/contract/roster-problem';
import { ok, type Result } from '@/lib/result/result';
import { type ColumnsProblem, findHeads, headsOf, type TableColumns } from '@/lib/table/columns';

/** What people head these columns with. */
const HEADS: Readonly<Record<RosterColumn, readonly string[]>> = {
  bib: ['bib', 'number', 'no', 'no.', '#', 'start number'],
  name: ['name', 'racer', 'rider', 'driver'],
  machine: ['machine', 'sled', 'bike', 'engine'],
  class: ['class', 'classes', 'group'],
  mains: ['mains', 'main', 'main jet', 'main jets', 'baseline', 'jets'],
  box: ['box', 'jet box', 'owned', 'jets owned'],
  'shared box': ['shared box', 'box of', 'trailer', 'box name'],
  marking: ['marking', 'jet marking'],
  temperature: ['temperature', 'temp', 'right at', 'baseline temperature', 'proven at'],
  elevation: ['elevation', 'altitude', 'height'],
  'station pressure': ['station pressure', 'barometer'],
  details: ['details'],
};

/** The order of the columns where none is named. */
const UNNAMED: readonly RosterColumn[] = ['name', 'mains', 'box', 'temperature', 'elevation', 'class'];
export const NEEDED_COLUMNS: readonly RosterColumn[] = ['name', 'mains', 'box', 'temperature'];

export type RosterColumns = TableColumns<RosterColumn> & {
  /** The unit that a column's head names. */
  readonly units: ReadonlyMap<RosterColumn, string>;
  readonly named: boolean;
};

/** Reads the first line as heads; where it holds none, the columns stand in the usual order. */
export function rosterColumns(cells: readonly string[]): Result<RosterColumns, ColumnsProblem<RosterColumn>> {
  const columnOf = (head: string) => readHead(head).column;
  const texts = headsOf(cells);
  const heads = texts.map(readHead);
  if (heads.every(({ column }) => column === null)) {
    const places = new Map(UNNAMED.map((column, index) => [column, index]));
    return ok({ places, units: new Map(), named: false, ignored: [], width: UNNAMED.length });
  }
  const columns = findHeads(texts, { needed: NEEDED_COLUMNS, columnOf });
  if (!columns.ok) return columns;
  const units = heads.flatMap(({ column, unit }) => (column === null ? [] : [[column, unit] as const]));
  return ok({ ...columns.value, units: new Map(units), named: true });
}

type Head = { readonly column: RosterColumn | null; readonly unit: string };

/** "Temp (°F)" is the temperature in °F. */
function readHead(head: string): Head {
  const text = head.toLowerCase();
  const match = /^(.*?)\s*(?:[([]\s*([^)\]]*)\s*[)\]]|(°\s*[cf]))?$/i.exec(text);
  const name = (match?.[1] ?? '').replaceAll('_', ' ').trim();
  const unit = (match?.[2] ?? match?.[3] ?? '').trim();
  const known = Object.entries(HEADS).find(([, names]) => names.includes(name));
  // Object.entries forgets that its keys are columns.
  return { column: (known?.[0] as RosterColumn | undefined) ?? null, unit };
}
