import type { Interval, Learned } from '@/lib/carb/learn';
import { interval90 } from '@/lib/carb/learn';
import { formatNumber } from '@/lib/units/format';
import styles from './learn.module.css';

const WIDTH = 400;
const LEFT = 92;
const RIGHT = 20;
const LEAST = 0.2;
const MOST = 1.3;
const TICKS = [0.25, 0.5, 0.75, 1, 1.25];
const ROW = 34;

const x = (exponent: number): number =>
  LEFT + ((Math.min(MOST, Math.max(LEAST, exponent)) - LEAST) / (MOST - LEAST)) * (WIDTH - LEFT - RIGHT);

type Bar = {
  readonly label: string;
  readonly mean: number;
  readonly interval: Interval;
  readonly now: boolean;
};

/** Both exponents before and after the evidence, as 90 % intervals on one scale. The table beside it says the same. */
export function ExponentPicture({ learned }: { readonly learned: Learned }) {
  const { prior, response } = learned;
  const before = (mean: number, sd: number): Bar => ({
    label: 'assumed',
    mean,
    interval: interval90(mean, sd),
    now: false,
  });
  const rows: readonly { readonly name: string; readonly bars: readonly Bar[] }[] = [
    {
      name: 'Pressure',
      bars: [
        before(prior.pressureExponent, prior.pressureSd),
        { label: 'learned', mean: response.pressureExponent, interval: learned.pressure, now: true },
      ],
    },
    {
      name: 'Temperature',
      bars: [
        before(prior.temperatureExponent, prior.temperatureSd),
        { label: 'learned', mean: response.temperatureExponent, interval: learned.temperature, now: true },
      ],
    },
  ];
  const height = rows.length * (2 * ROW + 14) + 34;
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${height}`}
      className={styles.picture}
      role="img"
      aria-label="Exponents, assumed and learned"
    >
      {TICKS.map((tick) => (
        <g key={tick}>
          <line x1={x(tick)} x2={x(tick)} y1={4} y2={height - 28} className={styles.grid} />
          <text x={x(tick)} y={height - 8} textAnchor="middle" className={styles.tick}>
            {formatNumber(tick, 2)}
          </text>
        </g>
      ))}
      {rows.map(({ name, bars }, row) =>
        bars.map((bar, i) => (
          <ExponentBar
            key={`${name} ${bar.label}`}
            bar={bar}
            name={name}
            y={row * (2 * ROW + 14) + i * ROW + 20}
          />
        )),
      )}
    </svg>
  );
}

function ExponentBar({ bar, name, y }: { readonly bar: Bar; readonly name: string; readonly y: number }) {
  const { low, high } = bar.interval;
  return (
    <g>
      <text x={0} y={y + 5} className={styles.tick}>
        {bar.now ? 'learned' : name}
      </text>
      <line x1={x(low)} x2={x(high)} y1={y} y2={y} className={bar.now ? styles.barNow : styles.barBefore} />
      <circle
        cx={x(bar.mean)}
        cy={y}
        r={bar.now ? 8 : 5}
        className={bar.now ? styles.dotNow : styles.dotBefore}
      />
    </g>
  );
}
