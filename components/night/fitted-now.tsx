import type { Setting } from '@/lib/carb/machine';
import type { Plan } from '@/lib/plan/types';
import { localClock } from '@/lib/time/zone';
import { runName } from '@/lib/words/runs';
import { jetsText } from '@/lib/words/settings';
import { driftWords } from './drift-words';
import styles from './plate.module.css';
import type { FittedStanding } from './standing';
import { StateStrip } from './state-strip';

type FittedNowProps = {
  readonly fitted: Setting;
  /** False where the app was never told and takes the baseline for granted. */
  readonly told: boolean;
  readonly standing: FittedStanding | null;
  readonly plan: Plan;
  readonly zone: string;
};

/** What is in the engine, and how it stands in the air of now. */
export function FittedNow({ fitted, told, standing, plan, zone }: FittedNowProps) {
  return (
    <section className={styles.block} aria-label="Fitted">
      <div className={styles.heading}>
        <h2 className={styles.label}>Fitted</h2>
        <p className={styles.figure}>{jetsText(fitted.mains)}</p>
        {fitted.trim === null ? null : <p className={styles.trim}>trim {fitted.trim}</p>}
      </div>
      {standing === null ? (
        <p>No hours for now: nothing can be said about this mixture.</p>
      ) : (
        <>
          <StateStrip state={standing.state} />
          <p>
            {whenText(standing, plan, zone)}: {driftWords(standing)}
          </p>
        </>
      )}
      {told ? null : (
        <p className={styles.aside}>Taken from the baseline; say so below if other jets are in.</p>
      )}
    </section>
  );
}

function whenText({ at, run }: FittedStanding, plan: Plan, zone: string): string {
  const clock = localClock(at, zone);
  return run === null ? `Now, ${clock}` : `For ${runName(plan, run)}, ${clock}`;
}
