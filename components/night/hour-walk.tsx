'use client';

import { useId } from 'react';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import type { Voice } from '@/lib/words/voice';
import { hourSentence } from './hour-sentence';
import styles from './hour-walk.module.css';
import type { Picture } from './picture';

type HourWalkProps = {
  readonly picture: Picture;
  readonly plan: Plan;
  readonly voice: Voice;
  readonly cursor: Instant | null;
  readonly onWalk: (at: Instant) => void;
};

/** Walks the chart hour by hour, by arrow key or finger, and says each hour: the chart's one tab stop. */
export function HourWalk({ picture, plan, voice, cursor, onWalk }: HourWalkProps) {
  const id = useId();
  const hours = picture.hours.filter(({ at }) => at >= picture.from && at <= picture.to);
  const found = hours.findIndex(({ at }) => at === cursor);
  const index = found === -1 ? 0 : found;
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
        min={0}
        max={hours.length - 1}
        step={1}
        value={index}
        aria-valuetext={text}
        onChange={(event) => walk(event.target.valueAsNumber)}
      />
      {/* The slider speaks its own value; this is for the eye. */}
      <p className={styles.text} aria-hidden="true">
        {found === -1 ? null : text}
      </p>
    </div>
  );
}
