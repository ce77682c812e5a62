import type { Acts } from '@/components/night/use-acts';
import { Notice } from '@/components/ui/notice';
import type { Night } from '@/lib/night/night';
import type { Standing } from '@/lib/standing/standing';
import type { ClockZone } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { dangerLine } from '@/lib/words/danger';
import { together } from '@/lib/words/together';
import { tonightSentence } from '@/lib/words/tonight';
import { InNowBlock } from './in-now';
import { NextBlock } from './next-block';
import styles from './plate.module.css';
import { QuestionBlock } from './question-block';
import { TopLine } from './top-line';

export type PlateProps = {
  readonly night: Night;
  readonly standing: Standing;
  readonly acts: Acts;
  readonly zone: ClockZone;
  readonly units: UnitChoice;
  /** What hinders a newer forecast, in two words; null: nothing does. */
  readonly fault?: string | null;
  /** At the track. */
  readonly large?: boolean;
};

/** The first screen: the air, what must be heard first, what is in and how it stands, and what comes next. */
export function Plate({ night, standing, acts, zone, units, fault = null, large = false }: PlateProps) {
  const { machine } = night;
  const { dangers, plan, job } = standing;
  // Nothing is to be done but this: it comes first.
  const stop = job.kind === 'do-not-race';
  const verdict = tonightSentence(machine);
  return (
    <div className={styles.plate}>
      <TopLine {...{ night, standing, zone, units, fault }} />
      <QuestionBlock {...{ machine, standing, zone, acts, large }} />
      {stop ? <NextBlock {...{ standing, zone, acts, large }} /> : null}
      {dangers.length === 0 ? null : (
        // On a screen the block of what comes next says it where nothing else is to be done.
        <div className={stop ? styles.paperOnly : undefined}>
          <Notice tone="danger" title={together(dangerLine(dangers, plan))} />
        </div>
      )}
      <InNowBlock {...{ machine, standing, zone, acts, large }} />
      {stop ? null : <NextBlock {...{ standing, zone, acts, large }} />}
      {verdict === null ? null : <p>{verdict}</p>}
    </div>
  );
}
