import type { Machine } from '@/lib/carb/machine';
import { settableTurns } from '@/lib/carb/pilot';
import { toCell } from '@/lib/table/cell';
import { writeTable } from '@/lib/table/write-table';
import type { CardCell, JetCard } from '@/lib/trail/card';
import type { UnitChoice } from '@/lib/units/choice';
import { elevationText, temperatureText } from '@/lib/units/entry-text';
import { cardCellSentence, cardMains } from '@/lib/words/jet-card';

type Cell = string | number;
type CsvColumn = { readonly head: string; readonly cell: (cell: CardCell) => Cell };

/**
 * The card as a table, one line for each cell, in the person's units; lines end as RFC 4180 wants. It holds what the
 * printed card holds, but each number alone in its column and each mark in a column of its own, in words.
 */
export function jetCardCsv(card: JetCard, machine: Machine, units: UnitChoice): string {
  const cells = card.rows.flat();
  const columns: readonly CsvColumn[] = [
    {
      head: `temperature ${units.temperature}`,
      cell: ({ temperature }) => Number(temperatureText(temperature, units)),
    },
    {
      head: `elevation ${units.elevation}`,
      cell: ({ elevation }) => Number(elevationText(elevation, units)),
    },
    ...mainColumns(cells, machine.carburettors.length),
    { head: 'main mark', cell: ({ mark }) => mark ?? 'in the box' },
    ...pilotColumns(machine),
    ...clipColumns(machine),
    { head: 'in words', cell: (cell) => toCell(cardCellSentence(cell)) },
  ];
  const fields = columns.map(({ head }) => head);
  const data = cells.map((each) => columns.map(({ cell }) => cell(each)));
  return writeTable(fields, data);
}

/** One column where all carburettors have the same everywhere, else one for each. */
function mainColumns(cells: readonly CardCell[], carburettors: number): readonly CsvColumn[] {
  if (cells.every((cell) => new Set(cardMains(cell)).size === 1))
    return [{ head: 'main', cell: (cell) => cardMains(cell)[0] ?? '' }];
  return Array.from({ length: carburettors }, (_, i) => ({
    head: `main ${i + 1}`,
    cell: (cell: CardCell) => cardMains(cell)[i] ?? '',
  }));
}

/** How a screw or a clip stands that has no way left: the words of the sign behind it on the card. */
const endMark = (logLeft: number): string => (logLeft < 0 ? 'at its end, lean' : 'at its end, rich');

function pilotColumns({ pilot }: Machine): readonly CsvColumn[] {
  if (pilot === null) return [];
  return [
    { head: 'pilot', cell: (cell) => cell.pilot?.jet ?? '' },
    {
      head: 'screw turns out',
      cell: (cell) => (cell.pilot === null ? '' : settableTurns(cell.pilot.turns, pilot)),
    },
    {
      head: 'screw mark',
      cell: (cell) => (cell.pilot?.act === 'none-left' ? endMark(cell.pilot.logLeft) : ''),
    },
  ];
}

function clipColumns({ needle }: Machine): readonly CsvColumn[] {
  if (needle === null) return [];
  return [
    { head: 'clip groove', cell: (cell) => cell.needle?.groove ?? '' },
    {
      head: 'clip mark',
      cell: (cell) => (cell.needle?.beyondNeedle === true ? endMark(cell.needle.logLeft) : ''),
    },
  ];
}
