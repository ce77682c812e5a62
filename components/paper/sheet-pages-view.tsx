'use client';

import type { CSSProperties, ReactNode } from 'react';
import { classNames } from '@/components/ui/class-names';
import { ShrunkToFit } from '@/components/ui/shrunk-to-fit';
import { type PlacedSheet, type SheetPage, sheetPages } from '@/lib/share/sheet-pages';
import type { SheetPaper } from '@/lib/share/sheet-paper';
import styles from './paper.module.css';
import { type Fit, useSheetFit } from './use-sheet-fit';

export type Sheet = {
  readonly key: string;
  /** What it is called where something is to be said of it. */
  readonly name: string;
  readonly body: ReactNode;
  /** Stands under the body, or on a sheet of its own where both together do not fit. */
  readonly rest?: ReactNode;
};

type SheetPagesViewProps = {
  readonly paper: SheetPaper;
  /** The same array as long as its sheets are the same. */
  readonly sheets: readonly Sheet[];
  /** What is said of sheets that do not fit on one page of this paper; not printed. */
  readonly tooLong?: (names: readonly string[]) => ReactNode;
};

/**
 * Sheets on pages with lines to cut along, as they will be printed: every page is filled, and the type of each sheet is
 * as large as its place allows.
 */
export function SheetPagesView({ paper, sheets, tooLong }: SheetPagesViewProps) {
  const { ref, fit } = useSheetFit<HTMLDivElement>(paper, sheets);
  const { needs, apart } = fit;
  const shown = sheets.flatMap((sheet) => partsOf(sheet, apart));
  const pages = sheetPages(
    shown.map(({ key }) => needs.get(key) ?? 'cell'),
    paper,
  );
  const long = shown.filter(({ key }) => needs.get(key) === 'more').map(({ name }) => name);
  return (
    <div ref={ref} className={styles.blackOnWhite}>
      {long.length === 0 || tooLong === undefined ? null : <div className={styles.note}>{tooLong(long)}</div>}
      <ShrunkToFit className={styles.pages}>
        {pages.map((page) => (
          <PageView key={page.sheets[0]?.sheet} page={page} paper={paper} sheets={shown} />
        ))}
      </ShrunkToFit>
    </div>
  );
}

type Part = Omit<Sheet, 'rest'> & { readonly rest: 'below' | 'none' };

function partsOf({ key, name, body, rest }: Sheet, apart: Fit['apart']): readonly Part[] {
  if (rest === undefined) return [{ key, name, body, rest: 'none' }];
  if (apart.has(key))
    return [
      { key, name, body, rest: 'none' },
      { key: `${key} rest`, name, body: rest, rest: 'none' },
    ];
  const both = (
    <>
      {body}
      {rest}
    </>
  );
  return [{ key, name, body: both, rest: 'below' }];
}

type PageViewProps = {
  readonly page: SheetPage;
  readonly paper: SheetPaper;
  readonly sheets: readonly Part[];
};

function PageView({ page, paper, sheets }: PageViewProps) {
  const grid = {
    '--width': `${paper.width}mm`,
    '--height': `${paper.height}mm`,
    '--columns': paper.columns,
    '--rows': paper.rows,
  };
  return (
    <div
      className={classNames(styles.page, styles[`${paper.size}-${paper.lies}`], page.more && styles.more)}
      style={grid as CSSProperties}
      data-page
    >
      {page.sheets.map((placed) => {
        const sheet = sheets[placed.sheet];
        if (sheet === undefined) return null;
        const cuts = [placed.column > 0 && styles.cutBeside, placed.row > 0 && styles.cutAbove];
        const whole = page.more ? 'more' : isWhole(placed, paper) ? 'page' : 'part';
        return (
          <div key={sheet.key} className={classNames(styles.place, ...cuts)} style={placeOf(placed)}>
            <div
              className={styles.sheet}
              data-sheet={sheet.name}
              data-sheet-key={sheet.key}
              data-place={whole}
              data-rest={sheet.rest}
            >
              {sheet.body}
            </div>
          </div>
        );
      })}
    </div>
  );
}

const placeOf = ({ column, row, across, down }: PlacedSheet): CSSProperties => ({
  gridColumn: `${column + 1} / span ${across}`,
  gridRow: `${row + 1} / span ${down}`,
});

const isWhole = ({ across, down }: PlacedSheet, { columns, rows }: SheetPaper): boolean =>
  across === columns && down === rows;
