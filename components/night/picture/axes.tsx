import type { Instant } from '@/lib/time/instant';
import { localClock } from '@/lib/time/zone';
import { formatNumber } from '@/lib/units/format';
import { hoursPerLabel } from './frame-of-picture';
import styles from './night-chart.module.css';
import type { Picture } from './picture';
import type { Plot } from './plot';

type AxisProps = { readonly picture: Picture; readonly plot: Plot };

/** The clock below the plot, at full hours, as many as have room. */
export function TimeAxis({ picture, plot, zone, width }: AxisProps & TimeAxisProps) {
  const { left, right, bottom, x } = plot;
  const every = hoursPerLabel(picture, width);
  const clocks = picture.ticks
    .map((at: Instant) => ({ at, clock: localClock(at, zone) }))
    .filter(({ clock }) => Number(clock.slice(0, 2)) % every === 0);
  return (
    <g>
      <line className={styles.axis} x1={left} x2={right} y1={bottom} y2={bottom} />
      {clocks.map(({ at, clock }) => (
        <text key={at} className={styles.tick} x={x(at)} y={bottom + 18} textAnchor="middle">
          {clock}
        </text>
      ))}
    </g>
  );
}

type TimeAxisProps = { readonly zone: string; readonly width: number };

/** The jets of the box beside the plot, each at its size. */
export function SizeAxis({ picture, plot: { left, top, bottom, y } }: AxisProps) {
  return (
    <g>
      <line className={styles.axis} x1={left} x2={left} y1={top} y2={bottom} />
      {picture.lanes.map(({ size }) => (
        <text key={size} className={styles.tick} x={left - 8} y={y(size) + 4.5} textAnchor="end">
          {formatNumber(size, Number.isInteger(size) ? 0 : 1)}
        </text>
      ))}
    </g>
  );
}
