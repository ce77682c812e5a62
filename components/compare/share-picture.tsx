import type { FairComparison, Share } from '@/lib/power/fair-comparison';
import { formatSignedPercent } from '@/lib/units/format';
import styles from './compare.module.css';

const WIDTH = 400;
const LEFT = 70;
const RIGHT = 64;
const ROW = 46;

type Bar = {
  readonly label: string;
  readonly share: Share;
  readonly from: number;
  readonly look: string | undefined;
};

/** The total change split into what air, mixture and part made: each bar starts where the one before it ended. */
export function SharePicture({ comparison }: { readonly comparison: FairComparison }) {
  const { total, air, mixture, part } = comparison;
  const bars: readonly Bar[] = [
    { label: 'Total', share: total, from: 0, look: styles.total },
    { label: 'Air', share: air, from: 0, look: styles.air },
    { label: 'Mixture', share: mixture, from: air.change, look: styles.mixture },
    { label: 'Part', share: part, from: air.change + mixture.change, look: styles.part },
  ];
  const ends = bars.flatMap(({ share, from }) => [from, from + share.low, from + share.high]);
  const [least, most] = [Math.min(0, ...ends), Math.max(0, ...ends)];
  const span = Math.max(most - least, 0.001);
  const x = (change: number): number => LEFT + ((change - least) / span) * (WIDTH - LEFT - RIGHT);
  const height = bars.length * ROW + 8;
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${height}`}
      className={styles.picture}
      role="img"
      aria-label="The change split into air, mixture and part"
    >
      <PartHatch />
      <line x1={x(0)} x2={x(0)} y1={0} y2={height} className={styles.zero} />
      {bars.map((bar, row) => (
        <ShareBar key={bar.label} bar={bar} x={x} y={row * ROW + 12} />
      ))}
    </svg>
  );
}

/** Kinds are told apart by hatch and word, not by colour. */
function PartHatch() {
  return (
    <defs>
      <pattern id="share-air" width="8" height="8" patternUnits="userSpaceOnUse">
        <circle cx="4" cy="4" r="1.6" className={styles.ink} />
      </pattern>
      <pattern
        id="share-mixture"
        width="8"
        height="8"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <line x1="0" y1="0" x2="0" y2="8" className={styles.stroke} />
      </pattern>
    </defs>
  );
}

type ShareBarProps = { readonly bar: Bar; readonly x: (change: number) => number; readonly y: number };

function ShareBar({ bar: { label, share, from, look }, x, y }: ShareBarProps) {
  const [start, end] = [x(from), x(from + share.change)];
  const [low, high] = [x(from + share.low), x(from + share.high)];
  const middle = y + 14;
  return (
    <g>
      <text x={0} y={middle + 5} className={styles.label}>
        {label}
      </text>
      <rect
        x={Math.min(start, end)}
        y={y}
        width={Math.max(1, Math.abs(end - start))}
        height={28}
        className={look}
      />
      <path
        d={`M${low} ${middle} H${high} M${low} ${middle - 8} V${middle + 8} M${high} ${middle - 8} V${middle + 8}`}
        className={styles.whisker}
      />
      <text x={Math.max(high, end, start) + 8} y={middle + 5} className={styles.label}>
        {formatSignedPercent(share.change)}
      </text>
    </g>
  );
}
