'use client';

import { useId } from 'react';
import { Area, ComposedChart, Line, XAxis, YAxis } from 'recharts';
import type { Instant } from '@/lib/time/instant';
import { localClock } from '@/lib/time/zone';
import { formatNumber } from '@/lib/units/format';
import { CursorLayer, LaneLayer, RunLayer, StairLayer } from './chart-layers';
import { hoursPerLabel, LEFT, rightOf } from './frame-of-picture';
import { HatchPatterns } from './hatch-patterns';
import type { Lane } from './lane';
import styles from './night-chart.module.css';
import type { Picture } from './picture';

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

const RUN_ROW = 26;
const AXIS_ROW = 24;

/** The night in jet sizes: lanes, the ideal with its fan, and the plan as a staircase. */
export function NightChart({ picture, zone, width, now, extra, cursor }: NightChartProps) {
  const id = useId();
  const height = Math.round(Math.min(420, Math.max(300, width * 0.5)));
  const every = hoursPerLabel(picture, width);
  const ticks = picture.ticks.filter((at) => Number(localClock(at, zone).slice(0, 2)) % every === 0);
  const rows = picture.hours.map(({ at, ideal, idealLow, idealHigh }) => ({
    at,
    ideal: ideal[picture.carburettor],
    fan: [idealLow[picture.carburettor], idealHigh[picture.carburettor]],
  }));
  return (
    <ComposedChart
      className={styles.chart}
      width={width}
      height={height}
      data={rows}
      margin={{ top: RUN_ROW, right: rightOf(width), bottom: 0, left: 0 }}
      accessibilityLayer={false}
    >
      <HatchPatterns id={id} />
      <XAxis
        dataKey="at"
        type="number"
        domain={[picture.from, picture.to]}
        allowDataOverflow
        ticks={[...ticks]}
        interval={0}
        height={AXIS_ROW}
        tickLine={false}
        tick={{ className: styles.tick }}
        stroke="var(--line)"
        tickFormatter={(at: Instant) => localClock(at, zone)}
      />
      <YAxis
        type="number"
        domain={[picture.least, picture.most]}
        allowDataOverflow
        ticks={picture.lanes.map(({ size }) => size)}
        interval={0}
        width={LEFT}
        tickLine={false}
        tick={{ className: styles.tick }}
        stroke="var(--line)"
        tickFormatter={(size: number) => formatNumber(size, Number.isInteger(size) ? 0 : 1)}
      />
      <RunLayer picture={picture} now={now} zone={zone} />
      <LaneLayer picture={picture} beside={rightOf(width)} extra={extra} />
      <StairLayer picture={picture} patternId={id} />
      <Area
        dataKey="fan"
        type="monotone"
        isAnimationActive={false}
        activeDot={false}
        fill="var(--ink)"
        fillOpacity={0.14}
        stroke="var(--ink-2)"
        strokeWidth={1}
        strokeDasharray="2 3"
      />
      <Line
        dataKey="ideal"
        type="monotone"
        isAnimationActive={false}
        activeDot={false}
        dot={{ r: 2.5, fill: 'var(--ink)', stroke: 'none' }}
        stroke="var(--ink)"
        strokeWidth={2.5}
      />
      <CursorLayer picture={picture} cursor={cursor} />
    </ComposedChart>
  );
}
