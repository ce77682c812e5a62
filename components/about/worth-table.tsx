'use client';

import { Table } from '@/components/ui/table';
import { HINDCAST_NIGHTS, OTHER_NIGHTS, WAYS_WORTH, type WayWorth } from '@/lib/words/plan-worth';
import { unitsTogether } from '@/lib/words/together';
import styles from './about.module.css';

const NOT_COUNTED = '–';

const COLUMNS = [
  { head: 'Way', cell: ({ way }: WayWorth) => unitsTogether(way), names: true },
  { head: 'Lean runs, %', cell: ({ here }: WayWorth) => here.leanRuns, figures: true },
  { head: 'Swaps a night', cell: ({ here }: WayWorth) => here.swaps, figures: true },
  {
    head: `Lean runs, % (${OTHER_NIGHTS})`,
    cell: ({ elsewhere }: WayWorth) => elsewhere?.leanRuns ?? NOT_COUNTED,
    figures: true,
  },
  {
    head: `Swaps a night (${OTHER_NIGHTS})`,
    cell: ({ elsewhere }: WayWorth) => (
      <span className={styles.range}>{elsewhere?.swaps ?? NOT_COUNTED}</span>
    ),
    figures: true,
  },
];

export function WorthTable() {
  return (
    <Table
      caption={unitsTogether(
        `Counted on ${HINDCAST_NIGHTS} nights with this app, and on ${OTHER_NIGHTS} nights with other code. Lean: past the 2 % limit.`,
      )}
      columns={COLUMNS}
      rows={WAYS_WORTH}
      rowKey={({ way }) => way}
    />
  );
}
