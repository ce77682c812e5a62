'use client';

import type { ReactNode } from 'react';
import { useClockZone } from '@/components/store/use-clock-zone';
import { useAwake } from '@/components/ui/use-awake';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import { localClock } from '@/lib/time/zone';
import { SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import { Plate, type PlateProps } from './plate';
import styles from './track-view.module.css';

type TrackViewProps = PlateProps & {
  /** What changed meanwhile; stands above all else. */
  readonly notices?: ReactNode;
};

/** What is needed with gloves on: nothing else is on the screen, and it stays on. */
export function TrackView({ notices, ...props }: TrackViewProps) {
  const awake = useAwake();
  const zone = useClockZone(props.night.zone);
  return (
    <main className={styles.view} data-view="track">
      <h1>
        <VisuallyHidden>At the track: {props.night.records.event.value.event.name}</VisuallyHidden>
      </h1>
      <div className={styles.head}>
        <p className={styles.clock}>{localClock(props.standing.now, zone)}</p>
        <a className={styles.leave} href="#night">
          Whole night
        </a>
      </div>
      {notices}
      <Plate {...props} large />
      <a className={styles.leave} href="#track-reading">
        Take a reading
      </a>
      <p className={styles.aside}>{SWAP_CAUTION_LINE}</p>
      <p className={styles.aside}>
        {awake === 'kept' ? 'The screen stays on while this view is open.' : null}
        {awake === 'cannot' ? 'This browser cannot keep the screen on; set it in the device.' : null}
      </p>
    </main>
  );
}
