import { createPortal } from 'react-dom';
import { classNames } from '@/components/ui/class-names';
import { CardNotes } from './card-notes';
import styles from './card-sheet.module.css';
import { type CardParts, CardTable } from './card-table';

export type SheetSize = 'pocket' | 'page';

type CardSheetProps = CardParts & { readonly size: SheetSize; readonly name: string };

/** The card on paper and nothing else. It stands beside the page, so that the whole page can be left out of the print. */
export function CardSheet({ size, name, ...parts }: CardSheetProps) {
  return createPortal(
    <div
      className={classNames(styles.sheet, styles[size], parts.shows !== 'main' && styles.full)}
      data-print-card={size}
    >
      <p className={styles.name}>{name}: main jets by temperature and elevation</p>
      <CardTable {...parts} />
      <CardNotes {...parts} brief={size === 'pocket'} />
    </div>,
    document.body,
  );
}
