import type { Machine } from '@/lib/carb/machine';
import type { CardMark, JetCard } from '@/lib/trail/card';
import { CARD_LIMITS, cardEndsLegend, cardLegend, cardRounding } from '@/lib/words/jet-card';
import { jetsText } from '@/lib/words/settings';
import styles from './card.module.css';
import type { CardDraft } from './trail-draft';

type CardNotesProps = {
  readonly card: JetCard;
  readonly machine: Machine;
  readonly shows: CardDraft['shows'];
};

/** How to read the card: signs, rounding, and what it leans on. */
export function CardNotes({ card, machine, shows }: CardNotesProps) {
  const marks = [...new Set(card.rows.flat().map(({ mark }) => mark))].filter(
    (mark): mark is CardMark => mark !== null,
  );
  const ends = shows === 'main' ? null : cardEndsLegend(card.rows.flat());
  const baseline = jetsText(machine.carburettors.map(({ main }) => main));
  return (
    <ul className={styles.notes}>
      <li>
        Boxed: the baseline, {baseline}.
        {shows === 'main' ? '' : ' Beside it: screw turns out, another pilot in brackets'}
        {shows === 'main-screw-clip' ? ', and the clip groove from the top' : ''}
        {shows === 'main' ? '' : '.'}
        {machine.trim === null ? '' : ` Trim at ${machine.trim.baseline}.`}
      </li>
      {cardLegend(marks).map((text) => (
        <li key={text}>{text}.</li>
      ))}
      {ends === null ? null : <li>{ends}.</li>}
      <li>{cardRounding(machine)}</li>
      <li>{CARD_LIMITS}</li>
    </ul>
  );
}
