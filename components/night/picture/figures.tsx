'use client';

import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import type { Voice } from '@/lib/words/voice';
import { chartHeight } from './frame-of-picture';
import { HourWalk } from './hour-walk';
import type { Lane } from './lane';
import { NightChart } from './night-chart';
import type { Picture } from './picture';
import styles from './picture-section.module.css';

type FiguresProps = {
  readonly picture: Picture;
  readonly plan: Plan;
  readonly voice: Voice;
  readonly zone: ClockZone;
  readonly width: number;
  readonly now: Instant;
  readonly extra: Lane | null;
  readonly cursor: Instant | null;
  readonly onWalk: (cursor: Instant | null) => void;
};

/** The chart, the strip of the baseline below it, and the walk through both, hour by hour. */
export function Figures(props: FiguresProps) {
  const { picture, plan, voice, zone, width, now, extra, cursor, onWalk } = props;
  return (
    <>
      {/* Inert: what the chart library hangs listeners on, some browsers take for tab stops. */}
      <div className={styles.chart} style={{ minHeight: chartHeight(width) }} aria-hidden="true" inert>
        <NightChart {...{ picture, zone, width, now, extra, cursor }} />
      </div>
      <HourWalk {...{ picture, plan, voice, now, cursor, width, onWalk }} />
    </>
  );
}
