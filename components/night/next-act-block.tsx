import { Button } from '@/components/ui/button';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import { actSentences } from '@/lib/words/acts';
import { runName } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';
import { countdown } from './countdown';
import { type NextAct, nextAct, nextRun } from './next-act';
import styles from './plate.module.css';
import type { Acts } from './use-acts';

type NextActBlockProps = {
  readonly plan: Plan;
  readonly now: Instant;
  readonly zone: string;
  readonly acts: Acts;
  /** At the track buttons are taller. */
  readonly large?: boolean;
};

/** The one thing to do next, when, and the buttons that tell the plan it was done. */
export function NextActBlock({ plan, now, zone, acts, large = false }: NextActBlockProps) {
  const act = nextAct(plan, now);
  const run = nextRun(plan);
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
        {run === null ? null : (
          <Button
            size={large ? 'large' : 'normal'}
            wide
            onClick={() => acts.runMade(run.run, fittedIn(plan, act))}
          >
            {runName(plan, run.run)} is made
          </Button>
        )}
      </div>
    </section>
  );
}

/** A run made before the swap was confirmed was made on the old jets. */
function fittedIn(plan: Plan, act: NextAct) {
  const run = nextRun(plan);
  if (act.kind === 'swap' && run !== null && act.swap.beforeRun === run.run) return act.swap.from;
  return run?.setting ?? plan.baseline;
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
      <div className={styles.heading}>
        <h2 className={styles.label}>Next</h2>
        <p className={styles.lead}>No run to come.</p>
      </div>
    );
  if (act.kind === 'hold')
    return (
      <>
        <div className={styles.heading}>
          <h2 className={styles.label}>Next</h2>
          <p className={styles.lead}>No swap</p>
        </div>
        <p>
          {settingText(act.setting)} holds through {runName(plan, act.lastRun)}.
        </p>
      </>
    );
  const words = actSentences(plan, { zone }).find(({ swap }) => swap === act.swap);
  return (
    <>
      <div className={styles.heading}>
        <h2 className={styles.label}>Next</h2>
        <p className={styles.lead}>{words?.act}</p>
      </div>
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
