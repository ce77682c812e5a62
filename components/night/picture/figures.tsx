'use client';

import { useMemo, useRef, useState } from 'react';
import { useStillNear } from '@/components/ui/use-near';
import type { Lane } from '@/lib/carb/lane';
import type { Picture } from '@/lib/plan/night-picture';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { marksSentence } from '@/lib/words/marks-sentence';
import type { Voice } from '@/lib/words/voice';
import { useChartFrame } from './chart-frame';
import { chartHeight, hasLanes, TEMPERATURE_HEIGHT } from './frame-of-picture';
import { HourWalk } from './hour-walk';
import { Moments } from './moments';
import { NightChart } from './night-chart';
import styles from './picture-section.module.css';
import { TemperatureChart } from './temperature-chart';

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

/** Temperature above the jet it asks for, on one axis of time, and the walk through both, hour by hour. */
export function Figures(props: FiguresProps) {
  const { picture, plan, voice, zone, width, now, extra, cursor, onWalk } = props;
  const moments = useMemo(() => ({ now, cursor }), [now, cursor]);
  const frame = useChartFrame(picture, width);
  const height = chartHeight(width, plan);
  const ref = useRef<HTMLDivElement>(null);
  const near = useStillNear(ref);
  const asked = useMemo(
    () => ({ picture, zone, frame, height, extra }),
    [picture, zone, frame, height, extra],
  );
  const [drawn, draw] = useState(asked);
  // Far from the screen nobody sees the charts, and what they show is said below them: they stay as they were drawn.
  if (near && drawn !== asked) draw(asked);
  return (
    <Moments value={moments}>
      <p className={styles.legend}>
        The curve is the main jet the air asks for, with its likely range; the thick line is your jets. With
        the curve over the upper stripes they are lean, under the lower ones rich.{' '}
        {marksSentence(picture.hours)}
      </p>

      {/* Inert: what the chart library hangs listeners on, some browsers take for tab stops. */}
      <div
        ref={ref}
        className={styles.chart}
        style={{ minHeight: height + TEMPERATURE_HEIGHT }}
        aria-hidden="true"
        inert
      >
        <p className={styles.axisTitle}>Temperature</p>
        <TemperatureChart {...drawn} unit={voice.units.temperature} />
        <p className={styles.axisTitle}>
          <span>Main jet the air asks for</span>
          {hasLanes(width) ? <span>Where each jet is good</span> : null}
        </p>
        <NightChart {...drawn} />
      </div>
      <HourWalk {...{ picture, plan, voice, now, cursor, frame, onWalk }} />
    </Moments>
  );
}
