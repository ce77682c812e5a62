'use client';

import type { ReactNode } from 'react';
import { TRACK_READING } from '@/components/reading/reading-dialog';
import { classNames } from '@/components/ui/class-names';
import { useAwake } from '@/components/ui/use-awake';
import { SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import { dangerAtTrack } from '@/lib/words/danger';
import { riskSentence } from '@/lib/words/risk';
import { together } from '@/lib/words/together';
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
  const inDanger = props.standing.dangers.length > 0;
  const isSwap = props.standing.job.kind === 'swap';
  return (
    <main className={styles.view} data-view="track">
      {notices}
      <Plate {...props} large />
      <p>
        {inDanger
          ? together(dangerAtTrack(props.standing.dangers, props.standing.plan))
          : riskSentence(props.standing)}
      </p>
      <div className={styles.ways}>
        <a className={styles.leave} href="#night">
          Whole night
        </a>
        <a className={styles.leave} href="#track-reading">
          Take a reading
        </a>
      </div>
      {/* Where nothing in the box helps, this is not the time for a thermometer; the way to one stands above. */}
      {inDanger ? null : (
        <ReadingLine
          standing={props.standing}
          zone={props.zone}
          units={props.units}
          href={`#${TRACK_READING}`}
        />
      )}
      {inDanger ? null : (
        <p className={classNames(styles.aside, styles.screenOnly)}>
          {awake === 'kept' ? 'The screen stays on while this view is open.' : null}
          {awake === 'cannot'
            ? 'This browser cannot keep the screen on. Set it in the phone’s settings.'
            : null}
        </p>
      )}
      {inDanger && !isSwap ? null : <p className={styles.aside}>{SWAP_CAUTION_LINE}</p>}
    </main>
  );
}
