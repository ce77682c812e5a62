'use client';

import { memo, useState } from 'react';
import { Button } from '@/components/ui/button';
import { Section } from '@/components/ui/section';
import { ButtonRow } from '@/components/ui/stack';
import type { ClubAct } from '@/lib/club/acts';
import type { Briefing } from '@/lib/club/briefing';
import type { PlannedRacer } from '@/lib/club/racer';
import type { ClockZone } from '@/lib/time/zone';
import { momentsToCome } from '@/lib/words/bulk';
import { SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import { type ClubNames, clubActWords } from '@/lib/words/club';
import { IT_IS_IN } from '@/lib/words/it-is-in';
import { counted } from '@/lib/words/listing';
import { planClock } from '@/lib/words/runs';
import { together } from '@/lib/words/together';
import styles from './act-list.module.css';
import { AllIn } from './all-in';
import { Change } from './change';
import { OpenQuestions } from './open-questions';
import type { RosterActs } from './use-roster-acts';

type ActListProps = {
  readonly briefing: Briefing;
  readonly names: ClubNames;
  readonly zone: ClockZone;
  readonly acts: RosterActs;
  readonly onAccept: () => void;
};

/** The next hours of a large club; what comes later is shown when asked for. */
const FIRST_ACTS = 20;

/** Everything to be done tonight, in the order of time. */
export function ActList({ briefing, names, zone, acts, onAccept }: ActListProps) {
  const planned = new Map(briefing.planned.map((each) => [each.racer.id, each]));
  const [all, setAll] = useState(false);
  const shown = all ? briefing.acts : briefing.acts.slice(0, FIRST_ACTS);
  const later = briefing.acts.length - shown.length;
  return (
    <Section title="What to do, by the clock" aside={counted(briefing.acts.length, 'job')} id="acts">
      {briefing.acts.length === 0 ? (
        <p>Nothing to swap: everybody is on the jets the night asks for.</p>
      ) : (
        <p className={styles.caution}>{SWAP_CAUTION_LINE}</p>
      )}
      <OpenQuestions {...{ briefing, names, zone, acts }} />
      <AllIn moments={momentsToCome(briefing, zone)} planned={planned} acts={acts} />
      <ol className={styles.list}>
        {shown.map((act) => {
          const racer = planned.get(act.racerId);
          return racer === undefined ? null : (
            <ActRow
              key={`${act.racerId} ${act.swap.beforeRun}`}
              act={act}
              racer={racer}
              name={names.racer(act.racerId)}
              zone={zone}
              acts={acts}
            />
          );
        })}
      </ol>
      <ButtonRow>
        {later === 0 ? null : (
          <Button onClick={() => setAll(true)}>{`Show ${counted(later, 'later job')}`}</Button>
        )}
        <Button onClick={onAccept}>Lock this plan</Button>
      </ButtonRow>
      <p className={styles.hint}>
        Press this when sheets go out: plans then change only where a new one is clearly better.
      </p>
    </Section>
  );
}

type ActRowProps = {
  readonly act: ClubAct;
  readonly racer: PlannedRacer;
  readonly name: string;
  readonly zone: ClockZone;
  readonly acts: RosterActs;
};

const ActRow = memo(function ActRow({ act, racer, name, zone, acts }: ActRowProps) {
  const words = clubActWords(act, racer.plan, planClock(racer.plan, zone));
  return (
    <li className={styles.act}>
      <span className={styles.time}>{words.time}</span>
      <span className={styles.what}>
        <b>{name}</b>: <Change from={act.swap.from} to={act.swap.to} />
      </span>
      <span className={styles.where}>{together(words.about)}</span>
      <Button
        className={styles.done}
        aria-label={`${IT_IS_IN}, ${name}, ${words.change}`}
        onClick={() => void acts.fitted(racer, act.swap.to)}
      >
        {IT_IS_IN}
      </Button>
    </li>
  );
});
