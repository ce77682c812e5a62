import type { PlanHour } from '@/lib/plan/types';
import { fanPath, idealPath } from './ideal-curve';
import styles from './night-chart.module.css';
import type { Picture } from './picture';
import type { Plot } from './plot';

type CurveLayerProps = { readonly picture: Picture; readonly plot: Plot };

/** The size the air asks for, with its likely range, and a mark at every hour that says where it came from. */
export function CurveLayer({ picture, plot }: CurveLayerProps) {
  const { hours, carburettor, from, to } = picture;
  return (
    <g>
      <path className={styles.fan} d={fanPath(picture, plot)} />
      <path className={styles.ideal} d={idealPath(picture, plot)} />
      {hours
        .filter(({ at }) => at >= from && at <= to)
        .map(({ at, origin, ideal }) => {
          const size = ideal[carburettor];
          if (size === undefined) return null;
          return <HourMark key={at} origin={origin} x={plot.x(at)} y={plot.y(size)} />;
        })}
    </g>
  );
}

type HourMarkProps = { readonly origin: PlanHour['origin']; readonly x: number; readonly y: number };

/** A typed hour is an open square, a forecast one a dot, one put in between or filled in a small ring. */
function HourMark({ origin, x, y }: HourMarkProps) {
  switch (origin) {
    case 'typed':
      return <rect className={styles.openMark} x={x - 3.5} y={y - 3.5} width={7} height={7} />;
    case 'forecast':
      return <circle className={styles.mark} cx={x} cy={y} r={2.5} />;
    default:
      return <circle className={styles.openMark} cx={x} cy={y} r={2} />;
  }
}
