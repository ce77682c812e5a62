'use client';

import { memo, type ReactNode, useDeferredValue, useMemo, useState } from 'react';
import { PictureSection } from '@/components/night/picture/picture-section';
import { Plate } from '@/components/night/plate/plate';
import { ReadingLine } from '@/components/night/plate/reading-line';
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
import { Fall } from './fall';
import styles from './night-page.module.css';
import { NumbersOnRequest } from './numbers-on-request';
import type { Acts } from './use-acts';
import { Warnings } from './warnings';

type WholeNightProps = {
  readonly night: Night;
  readonly standing: Standing;
  readonly voice: CallVoice;
  readonly acts: Acts;
  readonly live: LiveNight;
  /** What changed meanwhile; what is to be done by it stands above them. */
  readonly notices: ReactNode;
  /** What hinders a newer forecast, in two words; null: nothing does. */
  readonly fault: string | null;
};

/** The planned night: the answer and the night below it, the picture that proves it, and what it was made from. */
export function WholeNight({ night, standing, voice, acts, live, notices, fault }: WholeNightProps) {
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
          <Plate {...{ night, standing, acts, fault }} zone={voice.zone} units={voice.units} />
          {notices}
          <Fall {...{ night, standing, voice }} />
          <ReadingLine standing={standing} zone={voice.zone} units={voice.units} href="#reading" />
          <div className={styles.ways}>
            <Way href="#track">At the track</Way>
            <Way href="#reading">Take a reading</Way>
            <Way href="/log">Log a run</Way>
            {records.event.value.demo ? <Way href="#new-night">Start my own night</Way> : null}
            {records.event.value.demo ? <Way href="/machines?edit=first">I ride trails</Way> : null}
          </div>
        </div>
        <div className={styles.rest}>
          <div className={styles.words}>
            <Call standing={standing} voice={voice} />
            <Warnings plan={plan} records={records} voice={voice} />
          </div>
          <div className={styles.proof}>
            {behind === null ? null : <Proof behind={behind} onCarburettor={setCarburettor} />}
          </div>
          {behind === null ? null : (
            <div className={styles.screenOnly}>
              <WatchSection watch={live.watch} onAccept={acts.accept} />
            </div>
          )}
        </div>
      </div>
      {behind === null ? null : <Below behind={behind} />}
    </main>
  );
}

type Behind = Omit<WholeNightProps, 'acts' | 'notices' | 'fault'> & { readonly carburettor: number };
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
  const { records } = night;
  return (
    <div className={styles.whole}>
      <div className={classNames(styles.screenOnly, styles.behind)}>
        <ReadingsSection planned={live.planned} units={voice.units} desk={live.desk} />
        <WeatherSection event={records.event} now={now} forecast={live.forecast} />
        <ShareNight night={night} plan={plan} units={voice.units} />
        <NumbersOnRequest {...{ night, plan, voice, carburettor }} />
      </div>
      <Cautions />
    </div>
  );
});
