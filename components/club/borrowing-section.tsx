import { Section } from '@/components/ui/section';
import { shortIn } from '@/lib/club/boxes';
import type { Briefing } from '@/lib/club/briefing';
import { borrowingSentences, type ClubNames, shortfallText } from '@/lib/words/club';
import { listing } from '@/lib/words/listing';
import styles from './borrowing.module.css';

type BorrowingProps = { readonly briefing: Briefing; readonly names: ClubNames };

/** Who lacks which jet, and who has it to spare once his own night is provided for. */
export function BorrowingSection({ briefing, names }: BorrowingProps) {
  const plans = new Map(briefing.planned.map(({ racer, plan }) => [racer.id, plan]));
  const short = briefing.boxes
    .map((box) => ({ box, short: shortIn(box) }))
    .filter(({ box, short }) => box.owners.length > 1 && short.size > 0);
  const nobody = briefing.borrowings.length === 0 && short.length === 0;
  return (
    <Section title="Borrowing" id="borrowing">
      {nobody ? <p>Every box holds what its owner’s night asks for.</p> : null}
      <ul className={styles.list}>
        {briefing.borrowings.map((borrowing) => {
          const { racerId, side } = borrowing.want;
          const plan = plans.get(racerId);
          return plan === undefined ? null : (
            <li key={`${racerId} ${side}`} className={side === 'richer' ? styles.lean : styles.rich}>
              <b>{names.racer(racerId)}</b>
              {borrowingSentences(borrowing, plan, names).map((sentence) => (
                <p key={sentence}>{sentence}</p>
              ))}
            </li>
          );
        })}
        {short.map(({ box, short: sizes }) => (
          <li key={box.boxId} className={styles.rich}>
            <b>{names.box(box.boxId)}</b>
            <p>
              {`${listing(box.owners.map(({ racer }) => names.racer(racer.id)))} together ask for more than it holds: ${shortfallText(sizes)}. Agree who swaps when, or borrow.`}
            </p>
          </li>
        ))}
      </ul>
      {nobody ? null : (
        <p className={styles.hint}>
          What an owner needs in any run tonight is not offered. A loan is not in the plan: once the jet is in
          the borrower’s hands, add it to that machine’s box.
        </p>
      )}
    </Section>
  );
}
