'use client';

import { type KeyboardEvent, memo, useMemo, useState } from 'react';
import { Wholes } from '@/components/night/wholes';
import { classNames } from '@/components/ui/class-names';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import type { Machine } from '@/lib/carb/machine';
import { acrossOf } from '@/lib/night/across';
import { type Figure, type FigureRow, figureOf } from '@/lib/night/figure';
import { hasBegun } from '@/lib/plan/has-begun';
import type { Standing } from '@/lib/standing/standing';
import { localClock } from '@/lib/time/zone';
import { runRowWords, swapRowWords } from '@/lib/words/figure';
import { type ActPart, PUT_IN, settingText } from '@/lib/words/settings';
import { actInRows } from '@/lib/words/together';
import type { Voice } from '@/lib/words/voice';
import styles from './night-figure.module.css';
import { RowDrawing } from './row-drawing';

type NightFigureProps = {
  readonly machine: Machine;
  readonly standing: Standing;
  readonly voice: Voice;
};

/**
 * The night from top to bottom: a row a run, a row for each swap, one for now; across them where the jets stand between
 * lean and rich. It is the table of the runs: what is drawn is said in words in the same cell. Arrows walk its rows.
 */
export const NightFigure = memo(function NightFigure({ machine, standing, voice }: NightFigureProps) {
  const { plan, now } = standing;
  const figure = useMemo(
    () => figureOf({ plan, machine, across: acrossOf(machine), now }),
    [plan, machine, now],
  );
  const [walked, setWalked] = useState(0);
  const last = figure.rows.length - 1;
  const stop = Math.min(walked, last);
  // The line is drawn anew where other jets were put in than the ones it was drawn with; nothing else moves.
  const [first] = useState(() => settingText(standing.inNow.setting));
  const stepped = settingText(standing.inNow.setting) !== first;
  function walk(event: KeyboardEvent<HTMLTableSectionElement>) {
    const to = { ArrowDown: stop + 1, ArrowUp: stop - 1, Home: 0, End: last }[event.key];
    const row = to === undefined ? undefined : event.currentTarget.rows[to];
    if (row === undefined || to === undefined) return;
    event.preventDefault();
    setWalked(to);
    row.focus();
  }
  return (
    <table
      className={classNames(styles.table, stepped && styles.stepped, last >= MANY && styles.many)}
      aria-label={CAPTION}
    >
      <colgroup>
        <col />
        <col />
        <col className={styles.banks} />
      </colgroup>
      <thead>
        <tr>
          <th scope="col">
            <VisuallyHidden>Time</VisuallyHidden>
          </th>
          <th scope="col">
            <VisuallyHidden>Jets</VisuallyHidden>
          </th>
          <th scope="col" className={styles.sides}>
            <div className={styles.ends}>
              <span>LEAN</span> <span>RICH</span>
            </div>
          </th>
        </tr>
      </thead>
      <tbody onKeyDown={walk}>
        {figure.rows.map((row, i) => (
          <Row
            key={keyOf(row)}
            {...{ row, figure, standing, voice }}
            stop={i === stop}
            onFocus={() => setWalked(i)}
          />
        ))}
      </tbody>
    </table>
  );
});

/** Rows from which on paper they stand closer. */
const MANY = 40;

/** The accessible name; the heading above it says the same to the eye. */
const CAPTION = 'Jets for every run, how they stand, and what is put in between.';

type RowProps = {
  readonly row: FigureRow;
  readonly figure: Figure;
  readonly standing: Standing;
  readonly voice: Voice;
  /** The one row that Tab comes to. */
  readonly stop: boolean;
  readonly onFocus: () => void;
};

function Row({ row, figure, standing: { plan }, voice, stop, onFocus }: RowProps) {
  const common = { tabIndex: stop ? 0 : -1, onFocus } as const;
  const drawing = <RowDrawing row={row} across={figure.across} />;
  if (row.kind === 'now')
    return (
      <tr {...common} className={styles.now}>
        <th scope="row" colSpan={2}>
          Now {localClock(row.at, voice.zone)}
        </th>
        <td>{drawing}</td>
      </tr>
    );
  if (row.kind === 'swap')
    return (
      <tr {...common} className={styles.swap}>
        <SwapCells words={swapRowWords(plan, row, voice)} due={row.due} />
        <td>{drawing}</td>
      </tr>
    );
  const words = runRowWords(plan, row.run, voice);
  const isOver = hasBegun(row.run);
  return (
    <tr {...common} className={classNames(styles.run, isOver && styles.over)}>
      <th scope="row">
        {/* The name first for the ear, the time first for the eye. */}
        <span className={styles.when}>
          <span className={styles.name}>
            <Wholes text={words.name} />{' '}
          </span>
          <span className={styles.time} aria-hidden="true">
            {words.start}
          </span>
        </span>
        <VisuallyHidden>{words.window}</VisuallyHidden>
      </th>
      <td>
        <span className={styles.jets}>
          <Wholes text={words.jets} />
        </span>{' '}
        <span className={styles.under}>
          {words.temperature === '' ? null : <span>{words.temperature}</span>}{' '}
          <span aria-hidden="true">{words.risk}</span>
        </span>
      </td>
      <td>
        <VisuallyHidden>{words.stands}</VisuallyHidden>
        {drawing}
      </td>
    </tr>
  );
}

/** When other jets go in, and which. */
function SwapCells({
  words,
  due,
}: {
  readonly words: ReturnType<typeof swapRowWords>;
  readonly due: boolean;
}) {
  return (
    <>
      <th scope="row">
        <span className={styles.whole} aria-hidden="true">
          {due ? <span className={styles.by}>by </span> : null}
          {words.start}
        </span>
        <VisuallyHidden>{words.window}</VisuallyHidden>
      </th>
      <td>
        <strong className={styles.act}>
          <Act parts={words.act} />
        </strong>
      </td>
    </>
  );
}

/**
 * "Put in 420 410 420", the words on the line of the jets and a second row of jets under the first; on the narrowest
 * screens the jets alone are seen.
 */
function Act({ parts }: { readonly parts: readonly ActPart[] }) {
  const { verb, rows, rest } = actInRows(parts);
  if (verb !== PUT_IN) return textOf(parts);
  return (
    <>
      <span className={styles.together}>
        <span className={styles.verb}>{verb} </span>
        <span className={styles.rows}>
          {rows.map((row, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows of one machine, told apart by their place
            <span key={place} className={styles.whole}>
              {textOf(row)}{' '}
            </span>
          ))}
        </span>
      </span>
      {rest.length === 0 ? null : <Wholes text={` ${textOf(rest)}`} />}
    </>
  );
}

const textOf = (parts: readonly ActPart[]): string => parts.map(({ text }) => text).join(' ');

function keyOf(row: FigureRow): string {
  if (row.kind === 'now') return 'now';
  return row.kind === 'run' ? `run ${row.run.run}` : `swap ${row.swap.beforeRun}`;
}
