import { Button } from '@/components/ui/button';
import { ButtonRow } from '@/components/ui/stack';
import type { Briefing } from '@/lib/club/briefing';
import type { PlannedRacer } from '@/lib/club/racer';
import type { ClockZone } from '@/lib/time/zone';
import { momentsOver } from '@/lib/words/bulk';
import type { ClubNames } from '@/lib/words/club';
import { questionWords } from '@/lib/words/question';
import styles from './act-list.module.css';
import { AllIn } from './all-in';
import type { RosterActs } from './use-roster-acts';

type OpenQuestionsProps = {
  readonly briefing: Briefing;
  readonly names: ClubNames;
  readonly zone: ClockZone;
  readonly acts: RosterActs;
};

/** Swaps whose time is over and of which nobody said that they were made: asked first, since all else hangs on them. */
export function OpenQuestions({ briefing, names, zone, acts }: OpenQuestionsProps) {
  const open = briefing.planned.filter(({ standing }) => standing.question !== null);
  if (open.length === 0) return null;
  const planned = new Map(open.map((each) => [each.racer.id, each]));
  return (
    <>
      <AllIn moments={momentsOver(briefing, zone)} planned={planned} acts={acts} />
      <ul className={styles.list} aria-label="Not told">
        {open.map((planned) => (
          <li key={planned.racer.id}>
            <OpenQuestion planned={planned} name={names.racer(planned.racer.id)} zone={zone} acts={acts} />
          </li>
        ))}
      </ul>
    </>
  );
}

type OpenQuestionProps = Pick<OpenQuestionsProps, 'zone' | 'acts'> & {
  readonly planned: PlannedRacer;
  readonly name: string;
};

function OpenQuestion({ planned, name, zone, acts }: OpenQuestionProps) {
  const { question } = planned.standing;
  const words = questionWords(planned.standing, zone);
  if (question === null || words === null) return null;
  return (
    <>
      <p>
        <b>
          {name}: {words.ask}
        </b>{' '}
        {words.meaning}
      </p>
      <ButtonRow>
        {words.yes.map(({ label, at }) => (
          <Button
            key={label}
            kind="primary"
            aria-label={`${name}: ${label}`}
            onClick={() => void acts.fitted(planned, question.to, at)}
          >
            {label}
          </Button>
        ))}
        <Button aria-label={`${name}: ${words.no}`} onClick={() => void acts.fitted(planned, question.from)}>
          {words.no}
        </Button>
      </ButtonRow>
    </>
  );
}
