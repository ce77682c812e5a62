import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { actSentences } from '@/lib/words/acts';
import { runName } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';
import { countdown } from './countdown';
import type { NextAct } from './next-act';
import styles from './plate.module.css';

type NextActWordsProps = {
  readonly act: NextAct;
  readonly plan: Plan;
  readonly now: Instant;
  readonly zone: ClockZone;
};

export function NextActWords({ act, plan, now, zone }: NextActWordsProps) {
  if (act.kind === 'over') return <p className={styles.lead}>No run to come</p>;
  if (act.kind === 'hold')
    return (
      <>
        <p className={styles.lead}>No swap</p>
        <p>
          {settingText(act.setting)} holds through {runName(plan, act.lastRun)}.
        </p>
      </>
    );
  const words = actSentences(plan, { zone }).find(({ swap }) => swap === act.swap);
  return (
    <>
      <p className={styles.lead}>{words?.act}</p>
      <p>{words?.where}</p>
      <p className={styles.when}>
        <span>{words?.window}</span> <span>{timeText(act, now)}</span>
      </p>
    </>
  );
}

function timeText({ swap, time }: Extract<NextAct, { kind: 'swap' }>, now: Instant): string {
  if (time === 'late') return 'the time for it has passed';
  if (time === 'open') return `start ${countdown(now, swap.latestStart)} at the latest`;
  return countdown(now, swap.windowStart);
}
