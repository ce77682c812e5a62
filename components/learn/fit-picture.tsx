import { useWidth } from '@/components/ui/use-width';
import { sizesAt } from '@/lib/carb/ideal';
import type { LearnedEntry } from '@/lib/carb/learn';
import type { Machine } from '@/lib/carb/machine';
import { formatNumber } from '@/lib/units/format';
import styles from './learn.module.css';

/** As large as there is room between these, so that its words are as large as others [px]; the most on paper. */
const LEAST_SIZE = 240;
const MOST_SIZE = 420;
const LEFT = 56;
const BOTTOM = 44;
const TOP = 12;

type FitPictureProps = {
  readonly entries: readonly LearnedEntry[];
  readonly machine: Machine;
  readonly names: ReadonlyMap<string, string>;
};

/** Every entry: the main it says is right against the main the fit gives in its air. On the line the two agree. */
export function FitPicture({ entries, machine, names }: FitPictureProps) {
  const { ref, width } = useWidth<HTMLElement>(MOST_SIZE);
  const size = Math.min(MOST_SIZE, Math.max(LEAST_SIZE, width));
  const points = entries.map((entry) => ({
    entry,
    fitted: sizesAt(machine, entry.fitted)[0] ?? 0,
    observed: sizesAt(machine, entry.observed)[0] ?? 0,
  }));
  const all = points.flatMap(({ fitted, observed }) => [fitted, observed]);
  if (all.length === 0) return null;
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const margin = Math.max((most - least) * 0.08, most * 0.005);
  const [low, high] = [least - margin, most + margin];
  const along = (value: number): number => (value - low) / (high - low);
  const x = (value: number): number => LEFT + along(value) * (size - LEFT - TOP);
  const y = (value: number): number => size - BOTTOM - along(value) * (size - BOTTOM - TOP);
  const ticks = ticksBetween(low, high);
  return (
    <figure ref={ref} className={styles.figure}>
      <svg
        viewBox={`0 0 ${size} ${size}`}
        width={size}
        height={size}
        className={styles.picture}
        role="img"
        aria-label="Entries against the fit"
      >
        {ticks.map((tick) => (
          <g key={tick}>
            <line x1={LEFT} x2={size - TOP} y1={y(tick)} y2={y(tick)} className={styles.grid} />
            <text x={LEFT - 8} y={y(tick) + 5} textAnchor="end" className={styles.tick}>
              {formatNumber(tick)}
            </text>
            <text x={x(tick)} y={size - BOTTOM + 20} textAnchor="middle" className={styles.tick}>
              {formatNumber(tick)}
            </text>
          </g>
        ))}
        <line x1={x(low)} y1={y(low)} x2={x(high)} y2={y(high)} className={styles.line} />
        {points.map(({ entry, fitted, observed }) => (
          <Mark key={entry.id} entry={entry} name={names.get(entry.id) ?? ''} x={x(fitted)} y={y(observed)} />
        ))}
      </svg>
      <figcaption>
        Across: the main the fit gives in an entry’s air. Up: the main the entry says is right. Circles are
        runs, squares chart cells, crosses stand apart from all others.
      </figcaption>
    </figure>
  );
}

type MarkProps = {
  readonly entry: LearnedEntry;
  readonly name: string;
  readonly x: number;
  readonly y: number;
};

function Mark({ entry, name, x, y }: MarkProps) {
  const title = <title>{name}</title>;
  if (entry.outlier)
    return (
      <path
        d={`M${x - 7} ${y - 7} L${x + 7} ${y + 7} M${x - 7} ${y + 7} L${x + 7} ${y - 7}`}
        className={styles.cross}
      >
        {title}
      </path>
    );
  if (entry.group === 'chart')
    return (
      <rect x={x - 5} y={y - 5} width={10} height={10} className={styles.mark}>
        {title}
      </rect>
    );
  return (
    <circle cx={x} cy={y} r={6} className={styles.mark}>
      {title}
    </circle>
  );
}

/** Three to seven round numbers between two. */
function ticksBetween(low: number, high: number): readonly number[] {
  const rough = (high - low) / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((nice) => nice * power).find((nice) => nice >= rough) ?? power * 10;
  const first = Math.ceil(low / step);
  const count = Math.floor(high / step) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => (first + i) * step);
}
