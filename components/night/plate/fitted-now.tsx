'use client';

import { Fragment, useState } from 'react';
import type { Acts } from '@/components/night/use-acts';
import { Button } from '@/components/ui/button';
import type { Machine } from '@/lib/carb/machine';
import type { InNow } from '@/lib/plan/types';
import type { Standing } from '@/lib/standing/standing';
import type { ClockZone } from '@/lib/time/zone';
import { driftWords, mixtureWords } from '@/lib/words/mixture';
import { jetsText } from '@/lib/words/settings';
import { FitDialog } from './fit-dialog';
import styles from './plate.module.css';
import { StateStrip } from './state-strip';

type FittedNowProps = {
  readonly machine: Machine;
  readonly standing: Standing;
  readonly zone: ClockZone;
  readonly acts: Acts;
  /** At the track buttons are taller. */
  readonly large: boolean;
};

/** What is in the engine, and how it stands in the air of now. */
export function FittedNow({ machine, standing, zone, acts, large }: FittedNowProps) {
  const [asking, setAsking] = useState(false);
  const { inNow, mixture, plan } = standing;
  const fitted = inNow.setting;
  return (
    <section className={styles.block} aria-label="Fitted">
      <div className={styles.row}>
        <h2 className={styles.label}>{IN_NOW[inNow.known]}</h2>
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
      {mixture === null ? (
        <p>No hours for now: nothing can be said about this mixture.</p>
      ) : (
        <>
          <StateStrip state={mixture.state} />
          <p>
            <strong>{mixtureWords(mixture, plan, zone)}</strong> {driftWords(mixture)}
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

const IN_NOW: Readonly<Record<InNow['known'], string>> = {
  told: 'Fitted',
  baseline: 'Fitted, taken from the baseline',
};
