import type { Machine } from '@/lib/carb/machine';
import type { CardDraft } from '@/lib/fields/trail/trail-rows';
import type { CardMark, JetCard } from '@/lib/trail/card';
import { SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import { CARD_LIMITS, cardEndsLegend, cardLegend, cardRounding } from '@/lib/words/jet-card';
import { jetsText } from '@/lib/words/settings';
import styles from './card.module.css';

type CardNotesProps = {
  readonly card: JetCard;
  readonly machine: Machine;
  readonly shows: CardDraft['shows'];
  /** Everything in one paragraph: a pocket card has little room. */
  readonly brief?: boolean;
};

/** How to read the card: signs, rounding, and what it leans on. */
export function CardNotes({ card, machine, shows, brief = false }: CardNotesProps) {
  const marks = [...new Set(card.rows.flat().map(({ mark }) => mark))].filter(
    (mark): mark is CardMark => mark !== null,
  );
  const ends = shows === 'main' ? null : cardEndsLegend(card.rows.flat());
  const baseline = jetsText(machine.carburettors.map(({ main }) => main));
  const trim = machine.trim === null ? [] : [`Trim at ${machine.trim.baseline}.`];
  const notes = [
    [`Boxed: the baseline, ${baseline}.`, ...BESIDE[shows], ...trim].join(' '),
    ...cardLegend(marks).map((text) => `${text}.`),
    ...(ends === null ? [] : [`${ends}.`]),
    cardRounding(machine),
    CARD_LIMITS,
    SWAP_CAUTION_LINE,
  ];
  if (brief) return <p className={styles.notes}>{notes.join(' ')}</p>;
  return (
    <ul className={styles.notes}>
      {notes.map((note) => (
        <li key={note}>{note}</li>
      ))}
    </ul>
  );
}

const BESIDE: Readonly<Record<CardDraft['shows'], readonly string[]>> = {
  main: [],
  'main-screw': ['Beside it: screw turns out, another pilot in brackets.'],
  'main-screw-clip': [
    'Beside it: screw turns out, another pilot in brackets, and the clip groove from the top.',
  ],
};
