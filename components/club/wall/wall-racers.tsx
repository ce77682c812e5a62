import { useId } from 'react';
import type { Briefing } from '@/lib/club/briefing';
import type { ClubNames } from '@/lib/words/club';
import { settingText } from '@/lib/words/settings';
import styles from './wall.module.css';

type WallRacersProps = { readonly briefing: Briefing; readonly names: ClubNames };

/** What is in each engine now. */
export function WallRacers({ briefing, names }: WallRacersProps) {
  const heading = useId();
  return (
    <section aria-labelledby={heading}>
      <h2 id={heading} className={styles.heading}>
        In the engines now
      </h2>
      <ul className={styles.racers}>
        {briefing.planned.map((each) => (
          <li key={each.racer.id} className={styles.racer}>
            <span>{names.racer(each.racer.id)}</span>
            <b>{settingText(each.standing.inNow.setting)}</b>
          </li>
        ))}
      </ul>
    </section>
  );
}
