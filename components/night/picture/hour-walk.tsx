'use client';

import { useId } from 'react';
import type { Picture } from '@/lib/plan/night-picture';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import { hourSentence } from '@/lib/words/hour-sentence';
import { together } from '@/lib/words/together';
import type { Voice } from '@/lib/words/voice';
import type { ChartFrame } from './chart-frame';
import styles from './hour-walk.module.css';

type HourWalkProps = {
  readonly picture: Picture;
  readonly plan: Plan;
  readonly voice: Voice;
  readonly now: Instant;
  readonly cursor: Instant | null;
  readonly frame: ChartFrame;
  readonly onWalk: (at: Instant) => void;
};

/** Walks the chart hour by hour, by arrow key or finger, and says each hour: the chart's one tab stop. */
export function HourWalk({ picture, plan, voice, now, cursor, frame, onWalk }: HourWalkProps) {
  const id = useId();
  const hours = picture.hours.filter(({ at }) => at >= picture.from && at <= picture.to);
  const index = nearestHour(hours, cursor ?? now);
  const hour = hours[index];
  if (hour === undefined) return null;
  const text = hourSentence(hour, { plan, voice, carburettor: picture.carburettor });
  function walk(to: number) {
    const next = hours[to];
    if (next !== undefined) onWalk(next.at);
  }
  return (
    <div className={styles.walk}>
      <label className={styles.label} htmlFor={id}>
        Walk the hours
      </label>
      <input
        id={id}
        type="range"
        className={styles.slider}
        style={underPlot(hours, picture, frame)}
        min={0}
        max={hours.length - 1}
        step={1}
        value={index}
        aria-valuetext={text}
        onChange={(event) => walk(event.target.valueAsNumber)}
      />
      {/* The slider speaks its own value; this is for the eye. */}
      <p className={styles.text} aria-hidden="true">
        {together(text)}
      </p>
    </div>
  );
}

/** Half of a slider's thumb: its middle, not its edge, stands under the first and the last hour. */
const HALF_THUMB = 8;

function underPlot(hours: readonly { readonly at: Instant }[], picture: Picture, { x }: ChartFrame) {
  const [first, last] = [hours[0]?.at ?? picture.from, hours.at(-1)?.at ?? picture.to];
  return { marginLeft: x(first) - HALF_THUMB, width: x(last) - x(first) + 2 * HALF_THUMB };
}

/** Index of the hour nearest to a moment; 0 where there are none. */
function nearestHour(hours: readonly { readonly at: Instant }[], moment: Instant): number {
  const distances = hours.map(({ at }) => Math.abs(at - moment));
  return Math.max(0, distances.indexOf(Math.min(...distances)));
}
