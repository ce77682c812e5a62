'use client';

import { memo, type ReactNode, useDeferredValue, useMemo, useState } from 'react';
import { PictureSection } from '@/components/night/picture/picture-section';
import { Plate } from '@/components/night/plate/plate';
import { SetupSection } from '@/components/night/setup/setup-section';
import { AirTable } from '@/components/night/tables/air-table';
import { BoxTable } from '@/components/night/tables/box-table';
import { RunTable } from '@/components/night/tables/run-table';
import { SwapCountTable } from '@/components/night/tables/swap-count-table';
import { ReadingsSection } from '@/components/reading/readings-section';
import { ShareNight } from '@/components/share/share-night';
import { classNames } from '@/components/ui/class-names';
import { FaultBoundary } from '@/components/ui/fault-boundary';
import { Way } from '@/components/ui/way';
import type { LiveNight } from '@/components/watch/use-live-night';
import { WatchSection } from '@/components/watch/watch-section';
import { WeatherSection } from '@/components/weather/weather-section';
import type { Night } from '@/lib/night/night';
import type { Standing } from '@/lib/standing/standing';
import type { CallVoice } from '@/lib/words/call';
import { Call } from './call';
import { Cautions } from './cautions';
import { NightHead } from './night-head';
import styles from './night-page.module.css';
import type { Acts } from './use-acts';
import { Warnings } from './warnings';

type WholeNightProps = {
  readonly night: Night;
  readonly standing: Standing;
  readonly voice: CallVoice;
  readonly acts: Acts;
  readonly live: LiveNight;
  /** What changed meanwhile; stands above the plan. */
  readonly notices: ReactNode;
};

/** The planned night: the answer, the picture that proves it, the tables behind it, and what it was made from. */
export function WholeNight({ night, standing, voice, acts, live, notices }: WholeNightProps) {
  const { machine, records } = night;
  const { plan } = standing;
  const [chosen, setCarburettor] = useState(0);
  const carburettor = chosen < machine.carburettors.length ? chosen : 0;
  const answered = useMemo(
    () => ({ night, standing, voice, live, carburettor }),
    [night, standing, voice, live, carburettor],
  );
  // The answer first, at once; all that stands behind it follows a little at a time, so that no finger has to wait.
  const behind = useDeferredValue<Behind | null>(answered, null);
  return (
    <main className={styles.page}>
      <div className={styles.top}>
        <div className={styles.first}>
          <NightHead event={records.event.value} machine={records.machine.value} />
          {notices}
          <Plate {...{ night, standing, acts }} units={voice.units} />
          <div className={styles.ways}>
            <Way href="#track">At the track</Way>
            <Way href="#reading">Take a reading</Way>
            <Way href="/log">Log a run</Way>
            {records.event.value.demo ? <Way href="#new-night">Start my own night</Way> : null}
          </div>
        </div>
        <div className={styles.rest}>
          <Call standing={standing} voice={voice} />
          <Warnings plan={plan} records={records} voice={voice} />
          {behind === null ? null : (
            <>
              <div className={styles.screenOnly}>
                <WatchSection watch={live.watch} onAccept={acts.accept} />
              </div>
              <Proof behind={behind} onCarburettor={setCarburettor} />
            </>
          )}
        </div>
      </div>
      {behind === null ? null : <Below behind={behind} />}
    </main>
  );
}

type Behind = Omit<WholeNightProps, 'acts' | 'notices'> & { readonly carburettor: number };
type BehindProps = { readonly behind: Behind };
type ProofProps = BehindProps & { readonly onCarburettor: (carburettor: number) => void };

const Proof = memo(function Proof({ behind, onCarburettor }: ProofProps) {
  const { night, standing, voice, carburettor } = behind;
  const { plan, now } = standing;
  return (
    <FaultBoundary part="The picture">
      <PictureSection {...{ night, plan, voice, now, carburettor, onCarburettor }} />
    </FaultBoundary>
  );
});

const Below = memo(function Below({ behind }: BehindProps) {
  const { night, standing, voice, live, carburettor } = behind;
  const { plan, now } = standing;
  const { machine, records } = night;
  return (
    <div className={styles.whole}>
      <RunTable plan={plan} voice={voice} />
      <div className={styles.screenOnly}>
        <BoxTable {...{ plan, machine, carburettor, voice }} />
      </div>
      <div className={classNames(styles.broad, styles.screenOnly)}>
        <SwapCountTable plan={plan} machineId={records.machine.id} />
      </div>
      <div className={classNames(styles.broad, styles.screenOnly)}>
        <AirTable plan={plan} voice={voice} />
      </div>
      <div className={classNames(styles.broad, styles.screenOnly)}>
        <ReadingsSection planned={live.planned} units={voice.units} desk={live.desk} />
      </div>
      <div className={classNames(styles.broad, styles.screenOnly)}>
        <WeatherSection event={records.event} now={now} forecast={live.forecast} />
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
  );
});
