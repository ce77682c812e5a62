import { useMemo } from 'react';
import { createPortal } from 'react-dom';
import { SheetPagesView } from '@/components/paper/sheet-pages-view';
import type { CardPaper } from '@/lib/share/card-papers';
import { CardNotes } from './card-notes';
import styles from './card-sheet.module.css';
import { type CardParts, CardTable } from './card-table';

type CardSheetProps = CardParts & { readonly printed: CardPaper; readonly name: string };

/**
 * The card on paper and nothing else. It stands beside the page, so that the whole page can be left out of the print,
 * and out of sight, so that it can be measured first. Where table and notes do not fit together, the notes are the back.
 */
export function CardSheet({ printed, name, card, machine, units, shows }: CardSheetProps) {
  const sheets = useMemo(
    () =>
      Array.from({ length: printed.copies }, (_, copy) => ({
        key: `copy ${copy}`,
        name: `${name}, card ${copy + 1}`,
        body: (
          <>
            <p className={styles.name}>{name}: main jets by temperature and elevation</p>
            <CardTable {...{ card, machine, units, shows }} onPaper />
          </>
        ),
        rest: <CardNotes {...{ card, machine, shows }} brief />,
      })),
    [printed, name, card, machine, units, shows],
  );
  return createPortal(
    <div className={styles.sheet} data-print-card={printed.value} aria-hidden="true" inert>
      <SheetPagesView paper={printed.paper} sheets={sheets} />
    </div>,
    document.body,
  );
}
