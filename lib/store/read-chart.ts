import { fail, ok, type Result } from '@/lib/result/result';
import type { ChartCellRecord } from '@/lib/store/machine-history';
import type { UnitChoice } from '@/lib/units/choice';
import { kelvinToCelsius } from '@/lib/units/convert';
import { readElevation, readNumber, readTemperature } from '@/lib/units/entry';
import { withoutDust } from '@/lib/units/entry-text';

export type ChartForm = 'grid' | 'list';

/** Why a pasted chart cannot be read, with the line and the text it stumbled over. */
export type ChartProblem =
  | { readonly code: 'empty' }
  | { readonly code: 'too-many-cells'; readonly limit: number }
  | {
      readonly code: 'bad-cell';
      readonly line: number;
      readonly what: 'temperature' | 'elevation' | 'main';
      readonly text: string;
    }
  | { readonly code: 'ragged'; readonly line: number; readonly cells: number; readonly wanted: number };

export const MOST_CHART_CELLS = 400;
const MOST_CHARACTERS = 100_000;

/** What stands in a chart where it says nothing. */
const NOTHING = /^(|-|–|—|n\/?a|x)$/i;

/**
 * A chart as pasted. `grid`: elevations in the first line, a temperature before each other line, mains between.
 * `list`: temperature, elevation and main in each line. Numbers without a unit are in the person's own.
 */
export function readChart(
  text: string,
  form: ChartForm,
  units: UnitChoice,
): Result<readonly ChartCellRecord[], ChartProblem> {
  const lines = text
    .slice(0, MOST_CHARACTERS)
    .split(/\r?\n/)
    .map((line, i) => ({ line: i + 1, cells: cellsOf(line) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const read = form === 'grid' ? readGrid(lines, units) : readList(lines, units);
  if (!read.ok) return read;
  if (read.value.length === 0) return fail({ code: 'empty' });
  return read.value.length > MOST_CHART_CELLS
    ? fail({ code: 'too-many-cells', limit: MOST_CHART_CELLS })
    : read;
}

type Line = { readonly line: number; readonly cells: readonly string[] };
type Cells = Result<readonly ChartCellRecord[], ChartProblem>;

/** Tabs part cells, else semicolons, else spaces, where a unit stays with its number. */
function cellsOf(line: string): readonly string[] {
  const joined = line.replace(/(\d)[ \u00a0]+(°? ?[CF]|ft|m)(?=\s|;|$)/gi, '$1$2');
  const cells = joined.includes('\t')
    ? joined.split('\t')
    : joined.includes(';')
      ? joined.split(';')
      : joined.trim().split(/\s+/);
  return cells.map((cell) => cell.trim());
}

function readGrid([head, ...rows]: readonly Line[], units: UnitChoice): Cells {
  const width = Math.max(0, ...rows.map(({ cells }) => cells.length - 1));
  if (head === undefined || width === 0) return fail({ code: 'empty' });
  // A corner may stand before the elevations.
  const titles = head.cells.slice(head.cells.length > width ? 1 : 0);
  if (titles.length !== width)
    return fail({ code: 'ragged', line: head.line, cells: titles.length, wanted: width });
  return collected(
    rows.flatMap(({ line, cells: [temperature = '', ...mains] }) =>
      mains.flatMap((main, i) =>
        NOTHING.test(main)
          ? []
          : [readCell({ line, temperature, elevation: titles[i] ?? '', main, head: head.line }, units)],
      ),
    ),
  );
}

function readList(lines: readonly Line[], units: UnitChoice): Cells {
  const ragged = lines.find(({ cells }) => cells.length !== 3);
  if (ragged !== undefined)
    return fail({ code: 'ragged', line: ragged.line, cells: ragged.cells.length, wanted: 3 });
  return collected(
    lines.map(({ line, cells: [temperature = '', elevation = '', main = ''] }) =>
      readCell({ line, temperature, elevation, main, head: line }, units),
    ),
  );
}

type TypedCell = {
  readonly line: number;
  readonly temperature: string;
  readonly elevation: string;
  readonly main: string;
  /** Line the elevation stands in. */
  readonly head: number;
};

function readCell(cell: TypedCell, units: UnitChoice): Result<ChartCellRecord, ChartProblem> {
  const bad = (what: 'temperature' | 'elevation' | 'main', line = cell.line): Result<never, ChartProblem> =>
    fail({ code: 'bad-cell', line, what, text: cell[what].slice(0, 40) });
  const temperature = readTemperature(cell.temperature, units.temperature);
  if (!temperature.ok) return bad('temperature');
  const temperatureC = withoutDust(kelvinToCelsius(temperature.value));
  if (temperatureC < -70 || temperatureC > 60) return bad('temperature');
  const elevation = readElevation(cell.elevation, units.elevation);
  if (!elevation.ok || elevation.value < -430 || elevation.value > 6000) return bad('elevation', cell.head);
  const main = readNumber(cell.main);
  if (!main.ok || main.value < 0.1 || main.value > 10_000) return bad('main');
  return ok({ temperatureC, elevationM: withoutDust(elevation.value), main: main.value });
}

/** All cells, or the first that is none. */
function collected(cells: readonly Result<ChartCellRecord, ChartProblem>[]): Cells {
  const bad = cells.find((cell) => !cell.ok);
  if (bad !== undefined && !bad.ok) return bad;
  return ok(cells.flatMap((cell) => (cell.ok ? [cell.value] : [])));
}
