'use client';

import { memo } from 'react';
import { ComposedChart, Line, XAxis, YAxis } from 'recharts';
import { type TemperatureUnit, temperatureIn } from '@/lib/units/choice';
import { formatNumber } from '@/lib/units/format';
import { CursorLayer, NowLayer, RunLayer, SunLayer } from './chart-layers';
import { TEMPERATURE_HEIGHT } from './frame-of-picture';
import { hourMark } from './hour-mark';
import type { NightChartProps } from './night-chart';
import styles from './night-chart.module.css';

type TemperatureChartProps = Omit<NightChartProps, 'extra' | 'height'> & { readonly unit: TemperatureUnit };

const RUN_ROW = 26;

/** In this share of the height, from the foot, a curve goes through words that stand there. */
const LOW = 0.4;

/** What the jets follow: the temperature of the same hours, in the same width, above them. */
export const TemperatureChart = memo(function TemperatureChart(props: TemperatureChartProps) {
  const { picture, zone, frame, unit } = props;
  const rows = picture.hours.map(({ at, origin, air }) => ({
    at,
    origin,
    temperature: temperatureIn(air.temperature, unit),
  }));
  const shown = rows.map(({ temperature }) => temperature);
  const [least, most] = [Math.floor(Math.min(...shown)), Math.ceil(Math.max(...shown))];
  const isLow = (at: number): boolean => {
    const next = rows.find((row) => row.at >= at) ?? rows.at(-1);
    return next !== undefined && next.temperature < least + LOW * (most - least);
  };
  return (
    <ComposedChart
      className={styles.chart}
      width={frame.width}
      height={TEMPERATURE_HEIGHT}
      data={rows}
      margin={{ top: RUN_ROW, right: frame.right, bottom: 6, left: 0 }}
      accessibilityLayer={false}
    >
      <XAxis type="number" dataKey="at" domain={[picture.from, picture.to]} allowDataOverflow hide />
      <YAxis
        type="number"
        domain={[least - 1, most + 1]}
        ticks={[least, most]}
        interval={0}
        width={frame.left}
        tickLine={false}
        tick={{ className: styles.tick, fill: 'var(--ink)' }}
        stroke="var(--line)"
        tickFormatter={(degrees: number) => `${formatNumber(degrees)}°`}
      />
      <RunLayer picture={picture} named />
      <SunLayer {...{ picture, zone, frame }} />
      <Line
        type="monotone"
        isAnimationActive={false}
        activeDot={false}
        dot={hourMark}
        dataKey="temperature"
        stroke="var(--ink)"
        strokeWidth={2.5}
      />
      <NowLayer picture={picture} isLow={isLow} />
      <CursorLayer picture={picture} />
    </ComposedChart>
  );
});
