import type { Acts } from '@/components/night/use-acts';
import { Button } from '@/components/ui/button';
import type { Setting } from '@/lib/carb/machine';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import { actSentences } from '@/lib/words/acts';
import { runName } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';
import { countdown } from './countdown';
import { type NextAct, nextAct, runUnderWay } from './next-act';
import styles from './plate.module.css';

type NextActBlockProps = {
  readonly plan: Plan;
  readonly now: Instant;
  readonly zone: string;
  readonly acts: Acts;
  readonly fitted: Setting;
  /** At the track buttons are taller. */
  readonly large?: boolean;
};

/** The one thing to do next, when, and the buttons that tell the plan it was done. */
export function NextActBlock({ plan, fitted, now, zone, acts, large = false }: NextActBlockProps) {
  const act = nextAct(plan, now);
  const begun = runUnderWay(plan, now);
  return (
    <section className={styles.block} aria-label="Next">
      <ActWordsBlock act={act} plan={plan} now={now} zone={zone} />
      <div className={styles.acts}>
        {act.kind === 'swap' ? (
          <Button
            kind="primary"
            size={large ? 'decide' : 'normal'}
            wide
            onClick={() => acts.fit(act.swap.to)}
          >
            I have fitted {settingText(act.swap.to)}
          </Button>
        ) : null}
        {begun === null ? null : (
          <Button size={large ? 'large' : 'normal'} wide onClick={() => acts.runMade(begun, fitted)}>
            {runName(plan, begun)} is made
          </Button>
        )}
      </div>
    </section>
  );
}

type ActWordsProps = {
  readonly act: NextAct;
  readonly plan: Plan;
  readonly now: Instant;
  readonly zone: string;
};

function ActWordsBlock({ act, plan, now, zone }: ActWordsProps) {
  if (act.kind === 'over')
    return (
      <>
        <h2 className={styles.label}>Next</h2>
        <p className={styles.lead}>No run to come</p>
      </>
    );
  if (act.kind === 'hold')
    return (
      <>
        <h2 className={styles.label}>Next</h2>
        <p className={styles.lead}>No swap</p>
        <p>
          {settingText(act.setting)} holds through {runName(plan, act.lastRun)}.
        </p>
      </>
    );
  const words = actSentences(plan, { zone }).find(({ swap }) => swap === act.swap);
  return (
    <>
      <h2 className={styles.label}>Next</h2>
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
  if (time === 'open') return `now; latest start ${countdown(now, swap.latestStart)}`;
  return countdown(now, swap.windowStart);
}
