import { useId } from 'react';
import { classNames } from '@/components/ui/class-names';
import { ScrollRegion } from '@/components/ui/scroll-region';
import type { Machine } from '@/lib/carb/machine';
import type { CardDraft } from '@/lib/fields/trail/trail-rows';
import type { CardCell, JetCard } from '@/lib/trail/card';
import type { UnitChoice } from '@/lib/units/choice';
import { formatElevation, formatTemperature } from '@/lib/units/format';
import { cardCellSentence, cardClipText, cardMainText, cardScrewText } from '@/lib/words/jet-card';
import styles from './card.module.css';

export type CardParts = {
  readonly card: JetCard;
  readonly machine: Machine;
  readonly units: UnitChoice;
  readonly shows: CardDraft['shows'];
};

type CardTableProps = CardParts & {
  /** Figures as large as the sheet allows, and nothing that scrolls. */
  readonly onPaper?: boolean;
};

/** The card itself: the same on the screen, in the pocket and on the wall. */
export function CardTable({ card, machine, units, shows, onPaper = false }: CardTableProps) {
  const captionId = useId();
  const table = (
    <table className={classNames(styles.card, onPaper && styles.onPaper)}>
      <caption id={captionId} className={styles.caption}>
        Main jets by temperature and elevation.
      </caption>
      <thead>
        <tr>
          <th scope="col">°{units.temperature}</th>
          {card.axes.elevations.map((elevation) => (
            <th key={elevation} scope="col">
              {formatElevation(elevation, units)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {card.rows.map((row, i) => (
          <tr key={card.axes.temperatures[i]}>
            <th scope="row">{formatTemperature(card.axes.temperatures[i]!, units, 0)}</th>
            {row.map((cell) => (
              <Cell key={cell.elevation} cell={cell} machine={machine} shows={shows} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
  return onPaper ? table : <ScrollRegion labelledBy={captionId}>{table}</ScrollRegion>;
}

type CellProps = {
  readonly cell: CardCell;
  readonly machine: Machine;
  readonly shows: CardDraft['shows'];
};

function Cell({ cell, machine, shows }: CellProps) {
  const isBaseline = cell.mains.every((main, i) => main === machine.carburettors[i]?.main);
  return (
    <td
      className={classNames(isBaseline && styles.baseline, cell.mark === 'borrow' && styles.borrow)}
      title={cardCellSentence(cell)}
    >
      <span className={styles.main}>{cardMainText(cell)}</span>
      {shows === 'main' ? null : (
        <>
          {' '}
          <span className={styles.small}>
            {cardScrewText(cell, machine)}
            {shows === 'main-screw-clip' ? ` · ${cardClipText(cell)}` : ''}
          </span>
        </>
      )}
    </td>
  );
}
