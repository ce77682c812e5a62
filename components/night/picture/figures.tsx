'use client';

import type { Lane } from '@/lib/carb/lane';
import type { Machine } from '@/lib/carb/machine';
import type { Picture } from '@/lib/plan/night-picture';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { settingText } from '@/lib/words/settings';
import type { Voice } from '@/lib/words/voice';
import { DriftStrip } from './drift-strip';
import { chartHeight } from './frame-of-picture';
import { HourWalk } from './hour-walk';
import { NightChart } from './night-chart';
import styles from './picture-section.module.css';

type FiguresProps = {
  readonly picture: Picture;
  readonly plan: Plan;
  readonly machine: Machine;
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
  const { picture, plan, machine, voice, zone, width, now, extra, cursor, onWalk } = props;
  return (
    <>
      {/* Inert: what the chart library hangs listeners on, some browsers take for tab stops. */}
      <div className={styles.chart} style={{ minHeight: chartHeight(width) }} aria-hidden="true" inert>
        <NightChart {...{ picture, zone, width, now, extra, cursor }} />
      </div>
      <p className={styles.legend}>
        The baseline {settingText(plan.baseline)}, hour by hour, if it stayed in: percent and jet sizes.
      </p>
      <DriftStrip picture={picture} machine={machine} width={width} />
      <HourWalk {...{ picture, plan, voice, now, cursor, width, onWalk }} />
    </>
  );
}
