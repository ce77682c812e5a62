'use client';

import { useId } from 'react';
import type { Instant } from '@/lib/time/instant';
import { SizeAxis, TimeAxis } from './axes';
import { CursorLayer, LaneLayer, NowLayer, RunLayer, StairLayer } from './chart-layers';
import { CurveLayer } from './curve-layer';
import { rightOf } from './frame-of-picture';
import { HatchPatterns } from './hatch-patterns';
import type { Lane } from './lane';
import styles from './night-chart.module.css';
import type { Picture } from './picture';
import { plotOf } from './plot';

export type NightChartProps = {
  readonly picture: Picture;
  readonly zone: string;
  readonly width: number;
  readonly now: Instant;
  /** A jet whose lane is drawn across the night beside the plan's own. */
  readonly extra: Lane | null;
  /** The hour a person has walked to. */
  readonly cursor: Instant | null;
};

/** The night in jet sizes: lanes, the ideal with its fan, and the plan as a staircase. */
export function NightChart({ picture, zone, width, now, extra, cursor }: NightChartProps) {
  const id = useId();
  const plot = plotOf(picture, width);
  return (
    <svg
      className={styles.chart}
      width={width}
      height={plot.height}
      viewBox={`0 0 ${width} ${plot.height}`}
      aria-hidden="true"
      data-picture="night"
    >
      <HatchPatterns id={id} />
      <RunLayer picture={picture} plot={plot} zone={zone} />
      <LaneLayer picture={picture} plot={plot} beside={rightOf(width)} extra={extra} />
      <StairLayer picture={picture} plot={plot} patternId={id} />
      <CurveLayer picture={picture} plot={plot} />
      <TimeAxis picture={picture} plot={plot} zone={zone} width={width} />
      <SizeAxis picture={picture} plot={plot} />
      <NowLayer picture={picture} plot={plot} now={now} />
      <CursorLayer picture={picture} plot={plot} cursor={cursor} />
    </svg>
  );
}
