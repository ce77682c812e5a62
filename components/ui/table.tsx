'use client';

import { type ReactNode, useId } from 'react';
import { classNames } from './class-names';
import { ScrollRegion } from './scroll-region';
import styles from './table.module.css';

export type Column<Row> = {
  readonly head: ReactNode;
  readonly cell: (row: Row, index: number) => ReactNode;
  /** Figures stand right-aligned, one under the other. */
  readonly figures?: boolean;
  /** The cell that names the row. */
  readonly names?: boolean;
  /** Left out on narrow screens; its fact must stand elsewhere in the row. */
  readonly wideOnly?: boolean;
};

type TableProps<Row> = {
  readonly caption: string;
  readonly captionHidden?: boolean;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row, index: number) => string;
  readonly rowClass?: (row: Row, index: number) => string | undefined;
  /** Said instead of an empty table. */
  readonly empty?: ReactNode;
};

export function Table<Row>(props: TableProps<Row>) {
  const { caption, captionHidden = false, columns, rows, rowKey, rowClass, empty } = props;
  const captionId = useId();
  if (rows.length === 0 && empty) return <p>{empty}</p>;
  return (
    <div>
      {/* Outside the part that scrolls sideways, so that it can always be read whole. */}
      <p id={captionId} className={captionHidden ? styles.hidden : styles.caption}>
        {caption}
      </p>
      <ScrollRegion labelledBy={captionId}>
        <table className={styles.table} aria-labelledby={captionId}>
          <thead>
            <tr>
              {columns.map((column, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: columns never move
                <th key={index} scope="col" className={cellClass(column)}>
                  {column.head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, index) => (
              <tr key={rowKey(row, index)} className={rowClass?.(row, index)}>
                {columns.map((column, place) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: columns never move
                  <Cell key={place} column={column} row={row} index={index} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </div>
  );
}

type CellProps<Row> = { readonly column: Column<Row>; readonly row: Row; readonly index: number };

function Cell<Row>({ column, row, index }: CellProps<Row>) {
  const content = column.cell(row, index);
  if (column.names) {
    return (
      <th scope="row" className={cellClass(column)}>
        {content}
      </th>
    );
  }
  return <td className={cellClass(column)}>{content}</td>;
}

function cellClass<Row>(column: Column<Row>): string {
  return classNames(column.figures && styles.figures, column.wideOnly && styles.wideOnly);
}
