'use client';

import { ComposedChart, Line, XAxis, YAxis } from 'recharts';
import { temperatureIn, type UnitChoice } from '@/lib/units/choice';
import { formatNumber } from '@/lib/units/format';
import { CursorLayer, NowLayer, RunLayer, SunLayer } from './chart-layers';
import { LEFT, rightOf, TEMPERATURE_HEIGHT } from './frame-of-picture';
import { hourMark } from './hour-mark';
import type { NightChartProps } from './night-chart';
import styles from './night-chart.module.css';

type TemperatureChartProps = Omit<NightChartProps, 'extra'> & { readonly units: UnitChoice };

const RUN_ROW = 26;

/** What the jets follow: the temperature of the same hours, in the same width, above them. */
export function TemperatureChart({ picture, zone, width, now, cursor, units }: TemperatureChartProps) {
  const rows = picture.hours.map(({ at, origin, air }) => ({
    at,
    origin,
    temperature: temperatureIn(air.temperature, units.temperature),
  }));
  const shown = rows.map(({ temperature }) => temperature);
  const [least, most] = [Math.floor(Math.min(...shown)), Math.ceil(Math.max(...shown))];
  return (
    <ComposedChart
      className={styles.chart}
      width={width}
      height={TEMPERATURE_HEIGHT}
      data={rows}
      margin={{ top: RUN_ROW, right: rightOf(width), bottom: 6, left: 0 }}
      accessibilityLayer={false}
    >
      <XAxis type="number" dataKey="at" domain={[picture.from, picture.to]} allowDataOverflow hide />
      <YAxis
        type="number"
        domain={[least - 1, most + 1]}
        ticks={[least, most]}
        interval={0}
        width={LEFT}
        tickLine={false}
        tick={{ className: styles.tick, fill: 'var(--ink)' }}
        stroke="var(--line)"
        tickFormatter={(degrees: number) => `${formatNumber(degrees)}°`}
      />
      <RunLayer picture={picture} named />
      <SunLayer picture={picture} zone={zone} now={now} />
      <Line
        type="monotone"
        isAnimationActive={false}
        activeDot={false}
        dot={hourMark}
        dataKey="temperature"
        stroke="var(--ink)"
        strokeWidth={2.5}
      />
      <NowLayer picture={picture} now={now} named />
      <CursorLayer picture={picture} cursor={cursor} />
    </ComposedChart>
  );
}
