import { useWidth } from '@/components/ui/use-width';
import type { Interval, Learned } from '@/lib/carb/learn';
import { interval90 } from '@/lib/carb/learn';
import { formatNumber } from '@/lib/units/format';
import styles from './learn.module.css';

/** As wide as there is room between these, so that its words are as large as others [px]; the most on paper. */
const LEAST_WIDTH = 240;
const MOST_WIDTH = 400;
const LEFT = 92;
const RIGHT = 20;
const LEAST = 0.2;
const MOST = 1.3;
const TICKS = [0.25, 0.5, 0.75, 1, 1.25];
/** Where there is no room for them all beside each other [px]. */
const FEW_WIDTH = 320;
const FEW_TICKS = [0.25, 0.75, 1.25];
const ROW = 34;

type Across = (exponent: number) => number;

const acrossOf =
  (width: number): Across =>
  (exponent) =>
    LEFT + ((Math.min(MOST, Math.max(LEAST, exponent)) - LEAST) / (MOST - LEAST)) * (width - LEFT - RIGHT);

type Bar = {
  readonly label: string;
  readonly mean: number;
  readonly interval: Interval;
  readonly now: boolean;
};

type Row = { readonly name: string; readonly bars: readonly Bar[] };

function rowsOf(learned: Learned): readonly Row[] {
  const { prior, response, origin } = learned;
  /** Where there is no evidence there is nothing after it. */
  const after = (mean: number, interval: Interval): readonly Bar[] =>
    origin === 'prior' ? [] : [{ label: 'learned', mean, interval, now: true }];
  const before = (mean: number, sd: number): Bar => ({
    label: 'assumed',
    mean,
    interval: interval90(mean, sd),
    now: false,
  });
  return [
    {
      name: 'Pressure',
      bars: [
        before(prior.pressureExponent, prior.pressureSd),
        ...after(response.pressureExponent, learned.pressure),
      ],
    },
    {
      name: 'Temperature',
      bars: [
        before(prior.temperatureExponent, prior.temperatureSd),
        ...after(response.temperatureExponent, learned.temperature),
      ],
    },
  ];
}

/** Both exponents before and after the evidence, as 90 % intervals on one scale. The table beside it says the same. */
export function ExponentPicture({ learned }: { readonly learned: Learned }) {
  const { ref, width: room } = useWidth<HTMLDivElement>(MOST_WIDTH);
  const width = Math.min(MOST_WIDTH, Math.max(LEAST_WIDTH, room));
  const x = acrossOf(width);
  const rows = rowsOf(learned);
  const each = Math.max(...rows.map(({ bars }) => bars.length)) * ROW + 14;
  const height = rows.length * each + 34;
  return (
    <div ref={ref}>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        className={styles.picture}
        role="img"
        aria-label={learned.origin === 'prior' ? 'Exponents, assumed' : 'Exponents, assumed and learned'}
      >
        {(width < FEW_WIDTH ? FEW_TICKS : TICKS).map((tick) => (
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
              x={x}
              y={row * each + i * ROW + 20}
            />
          )),
        )}
      </svg>
    </div>
  );
}

type ExponentBarProps = {
  readonly bar: Bar;
  readonly name: string;
  readonly x: Across;
  readonly y: number;
};

function ExponentBar({ bar, name, x, y }: ExponentBarProps) {
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
