'use client';

import type { ReactNode } from 'react';
import { TRACK_READING } from '@/components/reading/reading-dialog';
import { useClockZone } from '@/components/store/use-clock-zone';
import { useAwake } from '@/components/ui/use-awake';
import { SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import { dangerSentences } from '@/lib/words/danger';
import { riskSentence } from '@/lib/words/risk';
import { Plate, type PlateProps } from './plate';
import { ReadingLine } from './reading-line';
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
      {notices}
      <Plate {...props} large />
      <p>{riskSentence(props.standing)}</p>
      <div className={styles.ways}>
        <a className={styles.leave} href="#night">
          Whole night
        </a>
        <a className={styles.leave} href="#track-reading">
          Take a reading
        </a>
      </div>
      <ReadingLine standing={props.standing} zone={zone} units={props.units} href={`#${TRACK_READING}`} />
      <p className={styles.aside}>
        {[...dangerSentences(props.standing.dangers, props.standing.plan), SWAP_CAUTION_LINE].join(' ')}
      </p>
      <p className={styles.aside}>
        {awake === 'kept' ? 'The screen stays on while this view is open.' : null}
        {awake === 'cannot' ? 'This browser cannot keep the screen on; set it in the device.' : null}
      </p>
    </main>
  );
}
