'use client';

import { useId } from 'react';
import { Area, ComposedChart, Line, XAxis, YAxis } from 'recharts';
import type { Lane } from '@/lib/carb/lane';
import type { Picture } from '@/lib/plan/night-picture';
import type { Instant } from '@/lib/time/instant';
import { type ClockZone, localClock, zoneName } from '@/lib/time/zone';
import { formatNumber } from '@/lib/units/format';
import { CursorLayer, LaneLayer, NowLayer, RunLayer, StairLayer } from './chart-layers';
import { chartHeight, hoursPerLabel, LEFT, rightOf } from './frame-of-picture';
import { HatchPatterns } from './hatch-patterns';
import { hourMark } from './hour-mark';
import styles from './night-chart.module.css';
import { StairNames } from './stair-names';

export type NightChartProps = {
  readonly picture: Picture;
  readonly zone: ClockZone;
  readonly width: number;
  readonly now: Instant;
  /** A jet whose lane is drawn across the night beside the plan's own. */
  readonly extra: Lane | null;
  /** The hour a person has walked to. */
  readonly cursor: Instant | null;
};

const RUN_ROW = 6;
const AXIS_ROW = 24;

/** What both axes have in common. */
const AXIS = {
  type: 'number',
  allowDataOverflow: true,
  interval: 0,
  tickLine: false,
  tick: { className: styles.tick, fill: 'var(--ink)' },
  stroke: 'var(--line)',
} as const;

const FAN = {
  type: 'monotone',
  isAnimationActive: false,
  activeDot: false,
  fill: 'var(--ink)',
  fillOpacity: 0.14,
  stroke: 'var(--ink-2)',
  strokeWidth: 1,
  strokeDasharray: '2 3',
} as const;

const CURVE = {
  type: 'monotone',
  isAnimationActive: false,
  activeDot: false,
  dot: hourMark,
  stroke: 'var(--ink)',
  strokeWidth: 2.5,
} as const;

function rowsOf({ hours, carburettor }: Picture) {
  return hours.map(({ at, origin, ideal, idealLow, idealHigh }) => ({
    at,
    origin,
    ideal: ideal[carburettor],
    fan: [idealLow[carburettor], idealHigh[carburettor]],
  }));
}

/** The night in jet sizes: lanes, the ideal with its fan, and the plan as a staircase. */
export function NightChart({ picture, zone, width, now, extra, cursor }: NightChartProps) {
  const id = useId();
  const every = hoursPerLabel(picture, width);
  const ticks = picture.ticks.filter(
    (at) => Number(localClock(at, zoneName(zone)).slice(0, 2)) % every === 0,
  );
  return (
    <ComposedChart
      className={styles.chart}
      width={width}
      height={chartHeight(width)}
      data={rowsOf(picture)}
      margin={{ top: RUN_ROW, right: rightOf(width), bottom: 0, left: 0 }}
      accessibilityLayer={false}
    >
      <HatchPatterns id={id} />
      <XAxis
        {...AXIS}
        dataKey="at"
        domain={[picture.from, picture.to]}
        ticks={[...ticks]}
        height={AXIS_ROW}
        tickFormatter={(at: Instant) => localClock(at, zone)}
      />
      <YAxis
        {...AXIS}
        domain={[picture.least, picture.most]}
        ticks={picture.lanes.map(({ size }) => size)}
        width={LEFT}
        tickFormatter={(size: number) => formatNumber(size, Number.isInteger(size) ? 0 : 1)}
      />
      <RunLayer picture={picture} />
      <LaneLayer picture={picture} beside={rightOf(width)} extra={extra} />
      <StairLayer picture={picture} patternId={id} />
      <Area {...FAN} dataKey="fan" />
      <Line {...CURVE} dataKey="ideal" />
      <NowLayer picture={picture} now={now} />
      <StairNames picture={picture} zone={zone} />
      <CursorLayer picture={picture} cursor={cursor} />
    </ComposedChart>
  );
}
