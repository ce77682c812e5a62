import type { RosterColumn, RosterTableProblem } from '@/lib/contract/roster-problem';
import { fail, ok, type Result } from '@/lib/result/result';
import { fromCell } from './csv-cell';

/** What people head these columns with. */
const HEADS: Readonly<Record<RosterColumn, readonly string[]>> = {
  name: ['name', 'racer', 'rider', 'driver'],
  machine: ['machine', 'sled', 'bike', 'engine'],
  class: ['class', 'classes', 'group'],
  mains: ['mains', 'main', 'main jet', 'main jets', 'baseline', 'jets'],
  box: ['box', 'jet box', 'owned', 'jets owned'],
  marking: ['marking', 'jet marking'],
  temperature: ['temperature', 'temp', 'right at', 'baseline temperature', 'proven at'],
  elevation: ['elevation', 'altitude', 'height'],
  'station pressure': ['station pressure', 'barometer'],
};

/** The order of the columns where none is named. */
const UNNAMED: readonly RosterColumn[] = ['name', 'mains', 'box', 'temperature', 'elevation', 'class'];
export const NEEDED_COLUMNS: readonly RosterColumn[] = ['name', 'mains', 'box', 'temperature'];

export type RosterColumns = {
  /** Where each column stands, and the unit its head names. */
  readonly places: ReadonlyMap<RosterColumn, { readonly index: number; readonly unit: string }>;
  readonly named: boolean;
  /** Heads nobody here knows; those columns are left aside. */
  readonly ignored: readonly string[];
};

/** Reads the first line as heads; where it holds none, the columns stand in the usual order. */
export function rosterColumns(cells: readonly string[]): Result<RosterColumns, RosterTableProblem> {
  const heads = cells.map(readHead);
  if (heads.every(({ column }) => column === null)) {
    const places = new Map(UNNAMED.map((column, index) => [column, { index, unit: '' }]));
    return ok({ places, named: false, ignored: [] });
  }
  const places = new Map<RosterColumn, { readonly index: number; readonly unit: string }>();
  for (const [index, { column, unit }] of heads.entries()) {
    if (column === null) continue;
    if (places.has(column)) return fail({ code: 'column-twice', column });
    places.set(column, { index, unit });
  }
  const missing = NEEDED_COLUMNS.filter((column) => !places.has(column));
  if (missing.length > 0) return fail({ code: 'columns-missing', columns: missing });
  const ignored = heads.flatMap(({ column, text }) => (column === null && text !== '' ? [text] : []));
  return ok({ places, named: true, ignored });
}

type Head = { readonly column: RosterColumn | null; readonly unit: string; readonly text: string };

/** Longer than any head; keeps a pasted novel from being searched. */
const LONGEST_HEAD = 80;

/** "Temp (°F)" is the temperature in °F. */
function readHead(cell: string): Head {
  const text = fromCell(cell).trim().slice(0, LONGEST_HEAD);
  const match = /^(.*?)\s*(?:[([]\s*([^)\]]*)\s*[)\]]|(°\s*[cf]))?$/i.exec(text.toLowerCase());
  const name = (match?.[1] ?? '').replaceAll('_', ' ').trim();
  const unit = (match?.[2] ?? match?.[3] ?? '').trim();
  const known = Object.entries(HEADS).find(([, names]) => names.includes(name));
  // Object.entries forgets that its keys are columns.
  return { column: (known?.[0] as RosterColumn | undefined) ?? null, unit, text };
}
