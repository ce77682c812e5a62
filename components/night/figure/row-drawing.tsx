import { classNames } from '@/components/ui/class-names';
import type { Across, PlaceAcross } from '@/lib/night/across';
import type { Cross, FigureRow } from '@/lib/night/figure';
import type { Segment } from '@/lib/night/trace';
import { settingText } from '@/lib/words/settings';
import styles from './night-figure.module.css';

type RowDrawingProps = { readonly row: FigureRow; readonly across: Across };

type RunRow = Extract<FigureRow, { kind: 'run' }>;

const percent = (share: number): string => `${(share * 100).toFixed(2)}%`;

/** One row of the figure, as wide and as tall as its cell: places in percent, so that nothing has to be measured. */
export function RowDrawing({ row, across }: RowDrawingProps) {
  return (
    <>
      <RowLines {...{ row, across }} />
      {row.kind === 'run' && row.ghostName !== null ? <GhostName name={row.ghostName} /> : null}
    </>
  );
}

/** The old jets' name beside their line, where it has room between that and the next line; else it is hidden by the styles. */
function GhostName({
  name: { setting, from, to, side },
}: {
  readonly name: NonNullable<RunRow['ghostName']>;
}) {
  return (
    <div
      className={classNames(styles.ghostRoom, side === 'left' && styles.ghostLeft)}
      style={{ left: percent(from), width: percent(to - from) }}
      aria-hidden="true"
    >
      <span className={styles.ghostName}>
        {settingText({ ...setting, mains: setting.mains.slice(0, 1) })}
      </span>
    </div>
  );
}

function RowLines({ row, across }: RowDrawingProps) {
  return (
    <svg className={styles.drawing} aria-hidden="true" width="100%" height="100%">
      <line className={styles.baseline} {...upright(across.baseline)} />
      <line className={styles.edge} {...upright(across.leanEdge)} />
      <line className={styles.edge} {...upright(across.richEdge)} />
      {row.kind === 'now' ? (
        <line
          className={styles.nowLine}
          x1={percent(across.leanEdge)}
          x2={percent(across.richEdge)}
          y1="50%"
          y2="50%"
        />
      ) : null}
      <Strokes segments={row.ghost} className={styles.ghost} />
      {row.kind === 'run' ? <Likely row={row} /> : null}
      <Strokes segments={row.line} className={styles.line} whole />
      {row.kind === 'run' ? <Marks row={row} /> : null}
    </svg>
  );
}

const upright = (x: number) => ({ x1: percent(x), x2: percent(x), y1: '0', y2: '100%' });

type StrokesProps = {
  readonly segments: readonly Segment[];
  readonly className: string | undefined;
  readonly whole?: boolean;
};

function Strokes({ segments, className, whole = false }: StrokesProps) {
  return segments.map(({ x1, y1, x2, y2 }) => (
    <line
      key={`${x1} ${y1} ${x2} ${y2}`}
      className={className}
      x1={percent(x1)}
      y1={percent(y1)}
      x2={percent(x2)}
      y2={percent(y2)}
      // In one piece for the stroke that steps; the others are dashed in pixels.
      {...(whole ? { pathLength: 1 } : {})}
    />
  ));
}

type RunProps = { readonly row: RunRow };

function Likely({ row: { dot } }: RunProps) {
  if (dot === null) return null;
  return <line className={styles.likely} x1={percent(dot.from.x)} x2={percent(dot.to.x)} y1="50%" y2="50%" />;
}

/** The dot, hollow once the run is over; what lies beyond the drawing is an arrow at its edge; the old jets a cross. */
function Marks({ row: { run, dot, cross } }: RunProps) {
  return (
    <>
      {cross === null ? null : <CrossMark cross={cross} />}
      {dot === null ? null : <Dot at={dot.at} over={run.state !== 'planned'} />}
    </>
  );
}

function Dot({ at, over }: { readonly at: PlaceAcross; readonly over: boolean }) {
  if (at.beyond === null)
    return (
      <circle
        className={over ? styles.dotOver : styles.dot}
        cx={percent(at.x)}
        cy="50%"
        r={over ? 5.5 : 6.5}
      />
    );
  return (
    <svg x={percent(at.x)} y="50%" className={styles.beyond} aria-hidden="true">
      <path
        className={over ? styles.dotOver : styles.dot}
        d={at.beyond === 'lean' ? 'M-3 0L9 -8V8Z' : 'M3 0L-9 -8V8Z'}
      />
    </svg>
  );
}

function CrossMark({ cross: { from, to, side } }: { readonly cross: Cross }) {
  return (
    <>
      <line
        className={classNames(styles.reach, styles[side])}
        x1={percent(from.x)}
        x2={percent(to.x)}
        y1="50%"
        y2="50%"
      />
      <svg x={percent(to.x)} y="50%" className={styles.beyond} aria-hidden="true">
        <path className={classNames(styles.cross, styles[side])} d="M-7 -7L7 7M7 -7L-7 7" />
      </svg>
    </>
  );
}
