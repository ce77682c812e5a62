'use client';

import { type CSSProperties, memo, useId } from 'react';
import { useStages } from '@/components/club/use-stages';
import { ScrollRegion } from '@/components/ui/scroll-region';
import type { BriefingRow } from '@/lib/club/matrix';
import { inGroups, ROWS_TOGETHER } from '@/lib/share/row-groups';
import type { Instant } from '@/lib/time/instant';
import type { ClubNames } from '@/lib/words/club';
import type { ShownMatrix } from '@/lib/words/matrix-of';
import styles from './matrix.module.css';
import { MatrixCell } from './matrix-cell';

type MatrixProps = {
  readonly matrix: ShownMatrix;
  readonly names: ClubNames;
  readonly caption: string;
  /** All rows together: what is printed is complete from the start. */
  readonly atOnce?: boolean;
  /** What stands under the clock of an hour, such as its temperature. */
  readonly under?: (at: Instant) => string;
};

/** Rows that are drawn at once. */
const ROWS_AT_ONCE = 10;

export function ClubMatrix({ matrix, names, caption, atOnce = false, under }: MatrixProps) {
  const captionId = useId();
  const parts = Math.max(1, Math.ceil(matrix.rows.length / ROWS_AT_ONCE));
  const stage = useStages(parts);
  const rows = atOnce ? matrix.rows : matrix.rows.slice(0, stage * ROWS_AT_ONCE);
  const groups = atOnce ? inGroups(rows, ROWS_TOGETHER) : [rows];
  return (
    <div className={atOnce ? undefined : styles.place} style={{ '--jets': mostJets(rows) } as CSSProperties}>
      {/* Outside the part that scrolls sideways, so that it can always be read whole. */}
      <p id={captionId} className={styles.caption}>
        {caption}. <Key />
      </p>
      <ScrollRegion labelledBy={captionId}>
        <table className={styles.matrix} aria-labelledby={captionId}>
          <thead>
            <tr>
              <th scope="col" className={styles.name}>
                Racer
              </th>
              {matrix.hours.map(({ at, clock }) => (
                <th key={at} scope="col">
                  {clock}
                  {under === undefined ? null : <span className={styles.under}>{under(at)}</span>}
                </th>
              ))}
            </tr>
          </thead>
          {groups.map((group) => (
            <tbody key={group[0]?.racerId}>
              {group.map((row) => (
                <MatrixRow key={row.racerId} row={row} name={names.racer(row.racerId)} />
              ))}
            </tbody>
          ))}
        </table>
      </ScrollRegion>
    </div>
  );
}

/** How many jets the longest set has: what an hour has to hold on one line. */
function mostJets(rows: readonly BriefingRow[]): number {
  const settings = rows.flatMap(({ cells }) => cells.flatMap((cell) => cell.settings));
  return Math.max(1, ...settings.map(({ mains }) => (new Set(mains).size === 1 ? 1 : mains.length)));
}

type MatrixRowProps = { readonly row: BriefingRow; readonly name: string };

const MatrixRow = memo(function MatrixRow({ row, name }: MatrixRowProps) {
  return (
    <tr>
      <th scope="row" className={styles.name}>
        {name}
      </th>
      {row.cells.map((cell, i) => (
        <MatrixCell key={cell.hour} cell={cell} before={row.cells[i - 1] ?? null} />
      ))}
    </tr>
  );
});

function Key() {
  return (
    <>
      <span className={styles.leanWord}>lean, risk 9 in 64</span> a run in danger;{' '}
      <span className={styles.richWord}>rich</span> too rich; <b className={styles.swapKey}>→ 420</b> swap in
      that hour; grey, no run.
    </>
  );
}
