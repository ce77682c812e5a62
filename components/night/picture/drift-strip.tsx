'use client';

import { useId } from 'react';
import type { Machine } from '@/lib/carb/machine';
import { logSizeStep } from '@/lib/carb/size-step';
import type { Picture } from '@/lib/plan/night-picture';
import { type StateSpan, stateSpans } from '@/lib/plan/state-spans';
import type { DriftState, PlanHour } from '@/lib/plan/types';
import { HOUR_MS } from '@/lib/time/instant';
import { formatSignedNumber } from '@/lib/units/format';
import styles from './drift-strip.module.css';
import { LEFT, rightOf, timeScale } from './frame-of-picture';
import { HatchPatterns, hatchId } from './hatch-patterns';

type DriftStripProps = { readonly picture: Picture; readonly machine: Machine; readonly width: number };

const WORDS = 22;
const BARS = 96;
const HEIGHT = WORDS + BARS + 4;
/** Room above and below the tallest bar for its number. */
const NUMBER = 14;

/** How the baseline itself would drift, hour by hour: up is rich, down is lean, in percent and in jet sizes. */
export function DriftStrip({ picture, machine, width }: DriftStripProps) {
  const id = useId();
  const x = timeScale(picture, width);
  const { lean, rich } = machine.limits;
  const drifts = picture.hours.map((hour) => hour.baselineDrift);
  const [most, least] = [Math.max(rich, ...drifts), Math.min(-lean, ...drifts)];
  const perDrift = (BARS - 2 * NUMBER) / (most - least);
  const y = (drift: number): number => WORDS + NUMBER + (most - drift) * perDrift;
  const main = machine.carburettors[picture.carburettor]?.main;
  const step = main === undefined ? null : Math.expm1(logSizeStep(machine, main));
  const right = width - rightOf(width);
  return (
    <svg
      className={styles.strip}
      width={width}
      height={HEIGHT}
      viewBox={`0 0 ${width} ${HEIGHT}`}
      aria-hidden="true"
    >
      <HatchPatterns id={id} />
      {picture.hours.map((hour) => (
        <HourBar key={hour.at} hour={hour} picture={picture} x={x} y={y} patternId={id} />
      ))}
      {[rich, -lean].map((limit) => (
        <g key={limit}>
          <line className={styles.limit} x1={LEFT} x2={right} y1={y(limit)} y2={y(limit)} />
          <text className={styles.axis} x={LEFT - 6} y={y(limit) + 4} textAnchor="end">
            {formatSignedNumber(limit * 100)} %
          </text>
        </g>
      ))}
      <line className={styles.zero} x1={LEFT} x2={right} y1={y(0)} y2={y(0)} />
      {step === null
        ? null
        : [1, -1].map((sizes) =>
            sizes * step < most && sizes * step > least ? (
              <text key={sizes} className={styles.axis} x={right + 6} y={y(sizes * step) + 4}>
                {formatSignedNumber(sizes)} size
              </text>
            ) : null,
          )}
      {stateSpans(picture).map((span) => (
        <SpanWord key={span.from} span={span} x={x} />
      ))}
    </svg>
  );
}

type HourBarProps = {
  readonly hour: PlanHour;
  readonly picture: Picture;
  readonly x: (at: number) => number;
  readonly y: (drift: number) => number;
  readonly patternId: string;
};

function HourBar({ hour, picture, x, y, patternId }: HourBarProps) {
  const from = Math.max(picture.from, hour.at - HOUR_MS / 2);
  const to = Math.min(picture.to, hour.at + HOUR_MS / 2);
  if (to <= from) return null;
  const [left, right] = [x(from) + 1, x(to) - 1];
  const [top, bottom] = [y(Math.max(0, hour.baselineDrift)), y(Math.min(0, hour.baselineDrift))];
  const below = hour.baselineDrift < 0;
  return (
    <g>
      <rect
        className={styles[`${hour.baselineState}Bar`]}
        x={left}
        width={Math.max(0, right - left)}
        y={top}
        height={Math.max(1, bottom - top)}
        fill={hour.baselineState === 'right' ? undefined : `url(#${hatchId(patternId, hour.baselineState)})`}
      />
      {right - left >= 24 ? (
        <text
          className={styles.figure}
          x={(left + right) / 2}
          y={below ? bottom + 12 : top - 4}
          textAnchor="middle"
        >
          {formatSignedNumber(hour.baselineDrift * 100, 1)}
        </text>
      ) : null}
    </g>
  );
}

const WORD: Readonly<Record<DriftState, string>> = { lean: 'lean', right: 'right', rich: 'rich' };

function SpanWord({ span, x }: { readonly span: StateSpan; readonly x: (at: number) => number }) {
  const [left, right] = [x(span.from), x(span.to)];
  return (
    <g>
      <line
        className={styles[`${span.state}Line`]}
        x1={left + 1}
        x2={right - 1}
        y1={WORDS - 3}
        y2={WORDS - 3}
      />
      {right - left >= 34 ? (
        <text
          className={styles[`${span.state}Word`]}
          x={(left + right) / 2}
          y={WORDS - 8}
          textAnchor="middle"
        >
          {WORD[span.state]}
        </text>
      ) : null}
    </g>
  );
}
