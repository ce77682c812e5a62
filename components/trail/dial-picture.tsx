'use client';

import { useWidth } from '@/components/ui/use-width';
import type { DialPoint, DialStretch, ScrewDial } from '@/lib/trail/dial';
import { temperatureFrom, temperatureIn, type UnitChoice } from '@/lib/units/choice';
import { formatEighths, formatTemperature } from '@/lib/units/format';
import type { Kelvin } from '@/lib/units/quantity';
import { turnsText } from '@/lib/words/screw';
import styles from './dial-picture.module.css';

type DialPictureProps = { readonly dial: ScrewDial; readonly units: UnitChoice };

/** As low as a hand's width asks for, as high as a desk's allows [px]. */
const heightOf = (width: number) => Math.min(300, Math.max(220, Math.round(width * 0.55)));
/** Half of a sheet [px]: the table stands beside it there. */
const PAPER_WIDTH = 400;
const MARGIN = { left: 44, right: 12, top: 44, bottom: 40 };
/** Names of pilots nearer to each other than this stand on two levels [px]. */
const NEAR = 64;

type Frame = {
  readonly x: (temperature: Kelvin) => number;
  readonly y: (turns: number) => number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly height: number;
};

function frameOf({ stretches, pilot }: ScrewDial, width: number): Frame {
  const coldest = stretches[0]?.points[0]?.temperature ?? 0;
  const warmest = stretches.at(-1)?.points.at(-1)?.temperature ?? 1;
  const [left, right] = [MARGIN.left, width - MARGIN.right];
  const height = heightOf(width);
  const [top, bottom] = [MARGIN.top, height - MARGIN.bottom];
  const most = pilot.mostTurns + 0.25;
  return {
    left,
    right,
    top,
    bottom,
    height,
    x: (t) => left + ((t - coldest) / (warmest - coldest)) * (right - left),
    y: (turns) => bottom - (turns / most) * (bottom - top),
  };
}

/** Temperature along, turns up: the allowed range as a band, one line for each pilot, the baseline as a ring. */
export function DialPicture({ dial, units }: DialPictureProps) {
  const { ref, width } = useWidth<HTMLElement>(PAPER_WIDTH);
  const { pilot, baseline } = dial;
  const frame = frameOf(dial, Math.max(width, 280));
  const middles = dial.stretches.map((stretch) => middleOf(stretch, frame));
  const isCrowded = middles.some((middle, i) => i > 0 && middle - (middles[i - 1] ?? 0) < NEAR);
  return (
    <figure ref={ref} className={styles.figure}>
      <svg
        className={styles.picture}
        width={Math.max(width, 280)}
        height={frame.height}
        role="img"
        aria-label="Turns of the screw against temperature; the table below says the same."
      >
        <rect
          className={styles.range}
          x={frame.left}
          width={frame.right - frame.left}
          y={frame.y(pilot.mostTurns)}
          height={frame.y(pilot.leastTurns) - frame.y(pilot.mostTurns)}
        />
        <Axes frame={frame} dial={dial} units={units} />
        {dial.takeovers.map(({ at }) => (
          <line
            key={at}
            className={styles.takeover}
            x1={frame.x(at)}
            x2={frame.x(at)}
            y1={frame.top - 8}
            y2={frame.bottom}
          />
        ))}
        {dial.stretches.map((stretch, i) => (
          <Line
            key={stretch.points[0]?.temperature}
            stretch={stretch}
            frame={frame}
            raised={isCrowded && i % 2 === 1}
          />
        ))}
        <Baseline frame={frame} point={baseline} text={`baseline ${turnsText(baseline.turns, pilot)}`} />
      </svg>
      <figcaption className={styles.caption}>
        Band: the turns the screw is good for, {formatEighths(pilot.leastTurns)} to{' '}
        {formatEighths(pilot.mostTurns)}. Each line is one pilot; where it leaves the band the next one takes
        over.
      </figcaption>
    </figure>
  );
}

type PartProps = { readonly frame: Frame };

function Axes({ frame, dial, units }: PartProps & DialPictureProps) {
  const step = units.temperature === 'F' ? 20 : 10;
  const ends = [dial.stretches[0]?.points[0], dial.stretches.at(-1)?.points.at(-1)];
  const [coldest, warmest] = ends.map((end) =>
    end === undefined ? 0 : temperatureIn(end.temperature, units.temperature),
  );
  const first = Math.ceil((coldest ?? 0) / step);
  const count = Math.floor((warmest ?? 0) / step) - first + 1;
  const marks = Array.from({ length: Math.max(0, count) }, (_, i) => (first + i) * step);
  const turns = Array.from({ length: Math.floor(dial.pilot.mostTurns * 2) + 1 }, (_, i) => i / 2);
  return (
    <g className={styles.axes}>
      {turns.map((each) => (
        <g key={each}>
          <line x1={frame.left} x2={frame.right} y1={frame.y(each)} y2={frame.y(each)} />
          <text x={frame.left - 6} y={frame.y(each) + 4} textAnchor="end">
            {formatEighths(each)}
          </text>
        </g>
      ))}
      {marks.map((degrees) => {
        const t = temperatureFrom(degrees, units.temperature);
        return (
          <text key={degrees} x={frame.x(t)} y={frame.bottom + 18} textAnchor="middle">
            {formatTemperature(t, units, 0).replace(/\s.*/, '°')}
          </text>
        );
      })}
      <text x={frame.left - 40} y={14}>
        turns out
      </text>
      <text x={frame.right} y={frame.height - 4} textAnchor="end">
        °{units.temperature}
      </text>
    </g>
  );
}

/** Where the name of a pilot stands: over the middle of its line. */
function middleOf({ points }: DialStretch, frame: Frame): number {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return 0;
  return (frame.x(first.temperature) + frame.x(last.temperature)) / 2;
}

type LineProps = PartProps & { readonly stretch: DialStretch; readonly raised: boolean };

function Line({ stretch, frame, raised }: LineProps) {
  const { points, jet, reach } = stretch;
  const path = points.map(({ temperature, turns }) => `${frame.x(temperature)},${frame.y(turns)}`).join(' ');
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return null;
  const room = frame.x(last.temperature) - frame.x(first.temperature) > 30;
  return (
    <>
      <polyline className={reach === 'held' ? styles.held : styles.line} points={path} />
      {room ? (
        <text
          className={styles.jet}
          x={middleOf(stretch, frame)}
          y={frame.top - (raised ? 26 : 10)}
          textAnchor="middle"
        >
          {jet}
          {reach === 'held' ? ' at its end' : ''}
        </text>
      ) : null}
    </>
  );
}

function Baseline({ frame, point, text }: PartProps & { readonly point: DialPoint; readonly text: string }) {
  const [x, y] = [frame.x(point.temperature), frame.y(point.turns)];
  if (x < frame.left || x > frame.right) return null;
  const right = x > (frame.left + frame.right) / 2;
  return (
    <>
      <circle className={styles.baseline} cx={x} cy={y} r={7} />
      <text
        className={styles.jet}
        x={right ? x - 12 : x + 12}
        y={y + 18}
        textAnchor={right ? 'end' : 'start'}
      >
        {text}
      </text>
    </>
  );
}
