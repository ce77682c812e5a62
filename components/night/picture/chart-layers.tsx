'use client';

import { use } from 'react';
import type { Lane } from '@/lib/carb/lane';
import { hasLane, STRIPES } from '@/lib/night/step-places';
import { hasBegun } from '@/lib/plan/has-begun';
import type { Picture, RunMark, Stair } from '@/lib/plan/night-picture';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { type ChartFrame, sizeName } from './chart-frame';
import { hasLanes, LANE_COLUMNS } from './frame-of-picture';
import { hatchId } from './hatch-patterns';
import { Moments } from './moments';
import styles from './night-chart.module.css';
import { usePixels } from './use-pixels';

type LayerProps = { readonly picture: Picture };

/** As wide as a number above a run with the air after it [px]. */
const RUN_NAME = 24;

/** Which numbers can be told apart where the runs begin at these places, from left to right. */
function withRoom(places: readonly number[]): readonly boolean[] {
  let free = Number.NEGATIVE_INFINITY;
  return places.map((place) => {
    if (place < free) return false;
    free = place + RUN_NAME;
    return true;
  });
}

/** The runs as bands, with their numbers above where the chart is the upper one: as many as can be told apart. */
export function RunLayer({ picture, named = false }: LayerProps & { readonly named?: boolean }) {
  const pixels = usePixels();
  if (pixels === null) return null;
  const { x, top, bottom } = pixels;
  const runs = picture.runs.filter(({ start, end }) => end >= picture.from && start <= picture.to);
  const hasRoom = withRoom(runs.map(({ start }) => x(start)));
  return (
    <g>
      {runs.map((run, index) => (
        <RunBand
          key={`${run.name} ${run.start}`}
          name={named && hasRoom[index] === true ? shortName(run.name, index) : null}
          {...{ run, named }}
          pixels={{ x, top, bottom }}
        />
      ))}
    </g>
  );
}

/**
 * Where the word of dusk or dawn begins, or ends: beside its line, on the side that the line of now does not cross; where
 * there is no room on that side, without its time, or not at all.
 */
function sunWordAt(
  { sun, now, left }: { readonly sun: number; readonly now: number | null; readonly left: number },
  [kind, clock]: readonly [string, string],
  room: (words: string) => number,
) {
  const whole = `${kind} ${clock}`;
  const crossed = now !== null && now >= sun && now - sun < room(whole);
  if (!crossed) return { place: { x: sun + 4 }, words: whole };
  if (sun - room(whole) >= left) return { place: { x: sun - 4, textAnchor: 'end' as const }, words: whole };
  return { place: { x: sun + 4 }, words: now - sun < room(kind) ? '' : kind };
}

/** Air on both sides of a word beside a line [px]. */
const WORD_AIR = 8;

type SunLayerProps = LayerProps & { readonly zone: ClockZone; readonly frame: ChartFrame };

/** Dusk and dawn as lines; where the word "now" stands beside one, its own word goes above that. */
export function SunLayer({ picture, zone, frame }: SunLayerProps) {
  const pixels = usePixels();
  const now = use(Moments)?.now ?? null;
  if (pixels === null) return null;
  const { x, top, bottom, left } = pixels;
  const nowAt = now === null ? null : x(now);
  const room = (words: string): number => frame.widthOf(words, frame.small) + WORD_AIR;
  return (
    <g>
      {picture.sun
        .filter(({ kind }) => kind === 'dusk' || kind === 'dawn')
        .map(({ kind, at }) => {
          const clock = localClock(at, zone);
          const { place, words } = sunWordAt({ sun: x(at), now: nowAt, left }, [kind, clock], room);
          const besideNow = nowAt !== null && Math.abs(nowAt - x(at)) < room(`${kind} ${clock}`);
          return (
            <g key={`${kind} ${at}`}>
              <line className={styles.sun} x1={x(at)} x2={x(at)} y1={top} y2={bottom} />
              <text className={styles.sunWord} {...place} y={bottom - (besideNow ? 22 : 4)}>
                {words}
              </text>
            </g>
          );
        })}
    </g>
  );
}

type RunBandProps = {
  readonly run: RunMark;
  readonly named: boolean;
  /** Written above it; null where there is no room for it. */
  readonly name: string | null;
  readonly pixels: {
    readonly x: (at: number) => number;
    readonly top: number;
    readonly bottom: number;
  };
};

/** The number in a name ("Round 4" gives 4), else the run's place. */
const shortName = (name: string, index: number): string => /(\d+)\s*$/.exec(name)?.[1] ?? String(index + 1);

function RunBand({ run, named, name, pixels: { x, top, bottom } }: RunBandProps) {
  const [left, right] = [x(run.start), Math.max(x(run.end), x(run.start) + 2)];
  return (
    <g>
      <rect className={styles.run} x={left} width={right - left} y={top} height={bottom - top} />
      {named ? (
        <rect
          className={hasBegun(run) ? styles.runOver : styles.runMark}
          x={left}
          width={right - left}
          y={top - 5}
          height={5}
        />
      ) : null}
      {name === null ? null : (
        <text className={styles.runName} x={(left + right) / 2} y={top - 10} textAnchor="middle">
          {name}
        </text>
      )}
    </g>
  );
}

type LaneLayerProps = LayerProps & {
  readonly frame: ChartFrame;
  readonly extra: Lane | null;
};

/** Every jet of the box: a hairline at its size, and beside the plot its lane from rich edge to lean edge. */
export function LaneLayer({ picture, frame, extra }: LaneLayerProps) {
  const pixels = usePixels();
  if (pixels === null) return null;
  const { left, right, y } = pixels;
  return (
    <g>
      {picture.lanes.map(({ size }) => (
        <line key={size} className={styles.jet} x1={left} x2={right} y1={y(size)} y2={y(size)} />
      ))}
      {hasLanes(frame.width)
        ? picture.lanes.map((lane, index) => (
            <LaneBeside
              key={lane.size}
              lane={lane}
              x={right + frame.laneColumn / 2 + 2 + (index % LANE_COLUMNS) * frame.laneColumn}
              y={y}
            />
          ))
        : null}
      {extra === null ? null : (
        <rect
          className={styles.extra}
          x={left}
          width={right - left}
          y={y(extra.leanEdge)}
          height={Math.max(0, y(extra.richEdge) - y(extra.leanEdge))}
        />
      )}
    </g>
  );
}

type LaneBesideProps = {
  readonly lane: Lane;
  readonly x: number;
  readonly y: (size: number) => number;
};

function LaneBeside({ lane, x, y }: LaneBesideProps) {
  const [lean, rich] = [y(lane.leanEdge), y(lane.richEdge)];
  return (
    <g>
      <line className={styles.lane} x1={x} x2={x} y1={rich} y2={lean} />
      <line className={styles.laneLean} x1={x - 5} x2={x + 5} y1={lean} y2={lean} />
      <line className={styles.laneRich} x1={x - 5} x2={x + 5} y1={rich} y2={rich} />
      {rich - lean > 30 ? (
        <text className={styles.laneName} x={x} y={(rich + lean) / 2 + 4} textAnchor="middle">
          {sizeName(lane.size)}
        </text>
      ) : null}
    </g>
  );
}

/** What the plan fits, each in its lane; the steps between them are written where they are made. */
export function StairLayer({ picture, patternId }: LayerProps & { readonly patternId: string }) {
  const pixels = usePixels();
  if (pixels === null) return null;
  const { x, top, bottom } = pixels;
  return (
    <g>
      {picture.swaps.map(({ from, to }) => (
        <rect
          key={from}
          className={styles.window}
          x={x(from)}
          width={Math.max(2, x(to) - x(from))}
          y={top}
          height={bottom - top}
        />
      ))}
      {picture.stairs.map((stair) => (
        <StairLane key={stair.from} {...{ stair, patternId, pixels }} />
      ))}
      <path className={styles.steps} d={stepsPath(picture.stairs, pixels)} />
    </g>
  );
}

type StairLaneProps = {
  readonly stair: Stair;
  readonly patternId: string;
  readonly pixels: Scales;
};

/** What the jet of a step is good for, between the stripes of both sides. */
function StairLane({ stair, patternId, pixels: { x, y } }: StairLaneProps) {
  const [left, right] = [x(stair.from), x(stair.to)];
  if (!hasLane({ left, right })) return null;
  const [lean, rich] = [y(stair.leanEdge), y(stair.richEdge)];
  const across = { x: left, width: right - left };
  return (
    <g>
      <rect className={styles.stair} {...across} y={lean} height={rich - lean} />
      <rect
        fill={`url(#${hatchId(patternId, 'lean')})`}
        {...across}
        y={lean - STRIPES.lean}
        height={STRIPES.lean}
      />
      <rect fill={`url(#${hatchId(patternId, 'rich')})`} {...across} y={rich} height={STRIPES.rich} />
    </g>
  );
}

type Scales = { readonly x: (at: number) => number; readonly y: (size: number) => number };

function stepsPath(stairs: readonly Stair[], { x, y }: Scales): string {
  return stairs
    .map(({ from, to, worth }, i) => `${i === 0 ? 'M' : 'L'}${x(from)} ${y(worth)}H${x(to)}`)
    .join('');
}

type NowLayerProps = LayerProps & {
  /** Whether what is drawn lies at the foot of the plot then; not given, the line has no name. */
  readonly isLow?: (at: number) => boolean;
};

/** The present, over all that is drawn; its name stands at the foot, or at the head where the curve goes through that. */
export function NowLayer({ picture, isLow }: NowLayerProps) {
  const pixels = usePixels();
  const now = use(Moments)?.now ?? null;
  if (pixels === null || now === null || now < picture.from || now > picture.to) return null;
  const at = pixels.x(now);
  return (
    <g>
      <line className={styles.now} x1={at} x2={at} y1={pixels.top} y2={pixels.bottom} />
      {isLow === undefined ? null : (
        <text className={styles.nowWord} x={at + 4} y={isLow(now) ? pixels.top + 14 : pixels.bottom - 4}>
          now
        </text>
      )}
    </g>
  );
}

/** Where a person has walked to. */
export function CursorLayer({ picture }: LayerProps) {
  const pixels = usePixels();
  const cursor = use(Moments)?.cursor ?? null;
  if (pixels === null || cursor === null || cursor < picture.from || cursor > picture.to) return null;
  const at = pixels.x(cursor);
  return <line className={styles.cursor} x1={at} x2={at} y1={pixels.top} y2={pixels.bottom} />;
}
