'use client';

import { Fragment, useState } from 'react';
import type { Acts } from '@/components/night/use-acts';
import { Button } from '@/components/ui/button';
import type { Machine, Setting } from '@/lib/carb/machine';
import type { Plan } from '@/lib/plan/types';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { runName } from '@/lib/words/runs';
import { jetsText } from '@/lib/words/settings';
import { driftWords } from './drift-words';
import { FitDialog } from './fit-dialog';
import styles from './plate.module.css';
import type { FittedStanding } from './standing';
import { StateStrip } from './state-strip';

type FittedNowProps = {
  readonly machine: Machine;
  readonly fitted: Setting;
  /** False where the app was never told and takes the baseline for granted. */
  readonly told: boolean;
  readonly standing: FittedStanding | null;
  readonly plan: Plan;
  readonly zone: ClockZone;
  readonly acts: Acts;
  /** At the track buttons are taller. */
  readonly large: boolean;
};

/** What is in the engine, and how it stands in the air of now. */
export function FittedNow({ machine, fitted, told, standing, plan, zone, acts, large }: FittedNowProps) {
  const [asking, setAsking] = useState(false);
  return (
    <section className={styles.block} aria-label="Fitted">
      <div className={styles.row}>
        <h2 className={styles.label}>{told ? 'Fitted' : 'Fitted, taken from the baseline'}</h2>
        <Button
          kind="quiet"
          size={large ? 'large' : 'normal'}
          className={styles.aside}
          onClick={() => setAsking(true)}
        >
          Other jets
        </Button>
      </div>
      <p className={styles.figure}>
        <BreakableJets text={jetsText(fitted.mains)} />
        {fitted.trim === null ? null : <span className={styles.trim}> trim {fitted.trim}</span>}
      </p>
      {standing === null ? (
        <p>No hours for now: nothing can be said about this mixture.</p>
      ) : (
        <>
          <StateStrip state={standing.state} />
          <p>
            <strong>
              {whenText(standing, plan, zone)}: {standing.state}.
            </strong>{' '}
            {driftWords(standing)}
          </p>
        </>
      )}
      {asking ? (
        <FitDialog
          machine={machine}
          fitted={fitted}
          onFit={(setting) => {
            acts.fit(setting);
            setAsking(false);
          }}
          onClose={() => setAsking(false)}
        />
      ) : null}
    </section>
  );
}

/** "410/400/410", broken between jets where it must be, never within one. */
function BreakableJets({ text }: { readonly text: string }) {
  return text.split('/').map((jet, place) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: carburettors are told apart by their place
    <Fragment key={place}>
      {place === 0 ? null : (
        <>
          /<wbr />
        </>
      )}
      {jet}
    </Fragment>
  ));
}

function whenText({ at, run }: FittedStanding, plan: Plan, zone: ClockZone): string {
  const clock = localClock(at, zone);
  return run === null ? `Now, ${clock}` : `${runName(plan, run)}, ${clock}`;
}
