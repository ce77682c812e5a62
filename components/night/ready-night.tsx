'use client';

import { useMemo, useState } from 'react';
import { PictureSection } from '@/components/night/picture/picture-section';
import { Plate } from '@/components/night/plate/plate';
import { TrackView } from '@/components/night/plate/track-view';
import { SetupSection } from '@/components/night/setup/setup-section';
import { AirTable } from '@/components/night/tables/air-table';
import { BoxTable } from '@/components/night/tables/box-table';
import { RunTable } from '@/components/night/tables/run-table';
import { SwapCountTable } from '@/components/night/tables/swap-count-table';
import { ShareNight } from '@/components/share/share-night';
import { classNames } from '@/components/ui/class-names';
import { FaultBoundary } from '@/components/ui/fault-boundary';
import { useHash } from '@/components/ui/use-hash';
import type { Plan } from '@/lib/plan/types';
import type { Preferences } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import type { CallVoice } from '@/lib/words/call';
import { Call } from './call';
import { Cautions } from './cautions';
import type { Night } from './night';
import { NightHead } from './night-head';
import styles from './night-page.module.css';
import { useActs } from './use-acts';
import { Warnings } from './warnings';

type ReadyNightProps = {
  readonly night: Night;
  readonly plan: Plan;
  readonly now: Instant;
  readonly preferences: Preferences;
};

/** A planned night, whole or as seen at the track. */
export function ReadyNight({ night, plan, now, preferences }: ReadyNightProps) {
  const { zone, machine, records } = night;
  const acts = useActs({ eventId: records.event.id, machineId: records.machine.id, plan });
  const hash = useHash();
  const [chosen, setCarburettor] = useState(0);
  const carburettor = chosen < machine.carburettors.length ? chosen : 0;
  const { temperature, pressure, elevation } = preferences;
  const voice = useMemo<CallVoice>(
    () => ({
      zone,
      units: { temperature, pressure, elevation },
      now,
      ride: records.event.value.event.ride,
    }),
    [zone, temperature, pressure, elevation, now, records],
  );
  if (hash === 'track') return <TrackView night={night} plan={plan} now={now} acts={acts} />;
  return (
    <main className={styles.page}>
      <div className={styles.top}>
        <div className={styles.first}>
          <NightHead event={records.event.value} machine={records.machine.value} />
          <Plate night={night} plan={plan} now={now} acts={acts} />
          <div className={styles.ways}>
            <a className={styles.way} href="#track">
              At the track
            </a>
            {records.event.value.demo ? (
              <a className={styles.way} href="#new-night">
                Start my own night
              </a>
            ) : null}
          </div>
        </div>
        <div className={styles.rest}>
          <Call plan={plan} voice={voice} />
          <Warnings plan={plan} voice={voice} />
          <FaultBoundary part="The picture">
            <PictureSection {...{ night, plan, voice, now, carburettor }} onCarburettor={setCarburettor} />
          </FaultBoundary>
        </div>
      </div>
      <div className={styles.whole}>
        <RunTable plan={plan} machine={machine} voice={voice} />
        <div className={styles.screenOnly}>
          <BoxTable {...{ plan, machine, carburettor, voice }} />
        </div>
        <div className={classNames(styles.broad, styles.screenOnly)}>
          <SwapCountTable plan={plan} />
        </div>
        <div className={classNames(styles.broad, styles.screenOnly)}>
          <AirTable plan={plan} voice={voice} />
        </div>
        <div className={classNames(styles.broad, styles.screenOnly)}>
          <SetupSection event={records.event} machine={records.machine} />
        </div>
        <div className={classNames(styles.broad, styles.screenOnly)}>
          <ShareNight night={night} plan={plan} units={voice.units} />
        </div>
        <div className={styles.broad}>
          <Cautions />
        </div>
      </div>
    </main>
  );
}
