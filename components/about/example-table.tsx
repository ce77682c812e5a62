'use client';

import { Table } from '@/components/ui/table';
import type { ExampleRow } from '@/lib/words/worked-example';
import { Symbols } from './symbols';

const COLUMNS = [
  { head: 'Step', cell: (row: ExampleRow) => <Symbols text={row.what} />, names: true },
  { head: 'Dusk', cell: (row: ExampleRow) => row.baseline, figures: true },
  { head: 'Night', cell: (row: ExampleRow) => row.night, figures: true },
];

export function ExampleTable({ rows }: { readonly rows: readonly ExampleRow[] }) {
  return (
    <Table
      caption="Each line can be followed with a pocket calculator and the formulae above."
      columns={COLUMNS}
      rows={rows}
      rowKey={(row) => row.what}
    />
  );
}
