'use client';

import { memo, useId } from 'react';
import { Area, ComposedChart, Line, XAxis, YAxis } from 'recharts';
import type { Lane } from '@/lib/carb/lane';
import { hoursNamed, sizesNamed } from '@/lib/night/axis-names';
import type { Picture } from '@/lib/plan/night-picture';
import type { Instant } from '@/lib/time/instant';
import { type ClockZone, localClock, zoneName } from '@/lib/time/zone';
import { type ChartFrame, sizeName } from './chart-frame';
import { CursorLayer, LaneLayer, NowLayer, RunLayer, StairLayer } from './chart-layers';
import { HatchPatterns } from './hatch-patterns';
import { hourMark } from './hour-mark';
import styles from './night-chart.module.css';
import { StairNames } from './stair-names';

export type NightChartProps = {
  readonly picture: Picture;
  readonly zone: ClockZone;
  readonly frame: ChartFrame;
  readonly height: number;
  /** A jet whose lane is drawn across the night beside the plan's own. */
  readonly extra: Lane | null;
};

const RUN_ROW = 6;
const AXIS_ROW = 24;
/** A line of words in sizes of their type. */
const LINE = 1.15;

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

/** The hours that are named under the chart. */
function namedTicks(picture: Picture, zone: ClockZone, frame: ChartFrame): readonly Instant[] {
  const { small, widthOf, width, x } = frame;
  const hours = picture.ticks.map((at) => ({
    at,
    hour: Number(localClock(at, zoneName(zone)).slice(0, 2)),
    x: x(at),
    width: widthOf(localClock(at, zone), small),
  }));
  return hoursNamed(hours, width).map(({ at }) => at);
}

/** The night in jet sizes: lanes, the ideal with its fan, and the plan as a staircase. */
export const NightChart = memo(function NightChart(props: NightChartProps) {
  const { picture, zone, frame, height, extra } = props;
  const id = useId();
  const sizes = sizesNamed(
    picture.lanes.map(({ size }) => size),
    picture,
    { height: height - RUN_ROW - AXIS_ROW, line: frame.small * LINE },
  );
  return (
    <ComposedChart
      className={styles.chart}
      width={frame.width}
      height={height}
      data={rowsOf(picture)}
      margin={{ top: RUN_ROW, right: frame.right, bottom: 0, left: 0 }}
      accessibilityLayer={false}
    >
      <HatchPatterns id={id} />
      <XAxis
        {...AXIS}
        dataKey="at"
        domain={[picture.from, picture.to]}
        ticks={[...namedTicks(picture, zone, frame)]}
        height={AXIS_ROW}
        tickFormatter={(at: Instant) => localClock(at, zone)}
      />
      <YAxis
        {...AXIS}
        domain={[picture.least, picture.most]}
        ticks={[...sizes]}
        width={frame.left}
        tickFormatter={sizeName}
      />
      <RunLayer picture={picture} />
      <LaneLayer {...{ picture, frame, extra }} />
      <StairLayer picture={picture} patternId={id} />
      <Area {...FAN} dataKey="fan" />
      <Line {...CURVE} dataKey="ideal" />
      <NowLayer picture={picture} />
      <StairNames {...{ picture, zone, frame }} />
      <CursorLayer picture={picture} />
    </ComposedChart>
  );
});
