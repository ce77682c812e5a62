import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** A row of a table of published values; sources in tests/fixtures/reference/README.md. */
export type ReferenceRow = {
  readonly text: (column: string) => string;
  readonly number: (column: string) => number;
  /** NaN where the table has no value. */
  readonly numberOrNaN: (column: string) => number;
};

function cell(row: Readonly<Record<string, string>>, column: string): string {
  const value = row[column];
  if (value === undefined) throw new Error(`no column ${column}`);
  return value;
}

export function referenceTable(name: string): readonly ReferenceRow[] {
  const path = fileURLToPath(new URL(`../fixtures/reference/${name}`, import.meta.url));
  const [head = '', ...lines] = readFileSync(path, 'utf8').trim().split(/\r?\n/);
  const columns = head.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    const row = Object.fromEntries(columns.map((column, i) => [column, cells[i] ?? '']));
    return {
      text: (column) => cell(row, column),
      number: (column) => {
        const value = Number(cell(row, column));
        if (cell(row, column) === '' || !Number.isFinite(value))
          throw new Error(`no number in ${column}: ${line}`);
        return value;
      },
      numberOrNaN: (column) => (cell(row, column) === '' ? Number.NaN : Number(cell(row, column))),
    };
  });
}
