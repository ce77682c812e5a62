'use client';

import { type CSSProperties, Fragment, useState } from 'react';
import type { Acts } from '@/components/night/use-acts';
import { Button } from '@/components/ui/button';
import { classNames } from '@/components/ui/class-names';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import type { Machine } from '@/lib/carb/machine';
import type { InNow } from '@/lib/plan/types';
import type { Standing } from '@/lib/standing/standing';
import type { ClockZone } from '@/lib/time/zone';
import { mixtureWords } from '@/lib/words/mixture';
import { FitDialog } from './fit-dialog';
import { Gauge } from './gauge';
import styles from './in-now.module.css';

type InNowProps = {
  readonly machine: Machine;
  readonly standing: Standing;
  readonly zone: ClockZone;
  readonly acts: Acts;
  /** At the track buttons are taller. */
  readonly large: boolean;
};

/** What is in the engine, and how it stands in the air of now. */
export function InNowBlock({ machine, standing, zone, acts, large }: InNowProps) {
  const [asking, setAsking] = useState(false);
  const { inNow, mixture } = standing;
  const { mains, trim } = inNow.setting;
  const words = mixtureWords(standing, zone);
  return (
    <section className={styles.block} aria-label="In now">
      <div className={styles.row}>
        <h2 className={styles.label}>{HEADING[inNow.known]}</h2>
        <Button
          kind="quiet"
          size={large ? 'large' : 'normal'}
          className={styles.aside}
          onClick={() => setAsking(true)}
        >
          Other jets
        </Button>
      </div>
      <Jets mains={mains} trim={trim} />
      {mixture === null || words === null ? (
        <p>No hours for now: nothing can be said about this mixture.</p>
      ) : (
        <>
          <Gauge machine={machine} mixture={mixture} size={mains[0] ?? 0} />
          <p className={classNames(styles.state, mixture.state === 'lean' && styles.lean)}>
            <strong className={words.first ? styles.word : styles.second}>{words.word}</strong>{' '}
            <span>
              {words.drift}
              <VisuallyHidden>{words.than}</VisuallyHidden>
            </span>
          </p>
        </>
      )}
      {asking ? (
        <FitDialog
          machine={machine}
          fitted={inNow.setting}
          onFit={(setting) => {
            acts.fit(setting);
            setAsking(false);
          }}
          ahead={acts.aheadOfFit}
          onClose={() => setAsking(false)}
        />
      ) : null}
    </section>
  );
}

type JetsProps = { readonly mains: readonly number[]; readonly trim: number | null };

const JETS_ACROSS = 3;

/** A column for every carburettor, also where all are alike: nobody has to guess whether one was forgotten. */
function Jets({ mains, trim }: JetsProps) {
  const across = Math.min(mains.length, JETS_ACROSS);
  const longest = Math.max(...mains.map((main) => String(main).length));
  // "162.5" takes more room than "410": three of those are what the largest figures have room for.
  const sizes = { '--gaps': across - 1, '--glyphs': Math.max(9, across * longest) } as CSSProperties;
  return (
    <>
      <p className={classNames(styles.jets, mains.length === 1 && styles.single)} style={sizes}>
        {mains.map((main, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: carburettors are told apart by their place
          <Fragment key={place}>
            {place % JETS_ACROSS === 0 ? null : <i className={styles.rule} />}
            <span>{main} </span>
          </Fragment>
        ))}
      </p>
      {trim === null ? null : <p className={styles.trim}>trim {trim}</p>}
    </>
  );
}

const HEADING: Readonly<Record<InNow['known'], string>> = {
  told: 'In now',
  baseline: 'In now: baseline',
};
