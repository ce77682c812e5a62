import { use } from 'react';
import { type Behind, freePlaces, type Patch, type WordsToPlace } from '@/lib/night/free-place';
import { hasLane, type PlanStep, placesOfName, placesOfSide, STRIPES } from '@/lib/night/step-places';
import { type Picture, swapOfStair } from '@/lib/plan/night-picture';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { stairNames } from '@/lib/words/stair-name';
import type { ChartFrame } from './chart-frame';
import { Moments } from './moments';
import styles from './night-chart.module.css';
import { usePixels } from './use-pixels';

type StairNamesProps = { readonly picture: Picture; readonly zone: ClockZone; readonly frame: ChartFrame };

const SIDES = ['lean', 'rich'] as const;

/** Over everything that is drawn, and where no line goes through a word: both sides, each jet, each swap at its step. */
export function StairNames({ picture, zone, frame }: StairNamesProps) {
  const pixels = usePixels();
  const now = use(Moments)?.now ?? picture.from;
  if (pixels === null) return null;
  return (
    <g>
      {wordsOf(picture, { zone, now, frame, pixels }).map(({ key, className, x, y, words }) => (
        <text key={key} className={className} x={x} y={y}>
          {words}
        </text>
      ))}
    </g>
  );
}

type Pixels = NonNullable<ReturnType<typeof usePixels>>;

type WordsRequest = {
  readonly zone: ClockZone;
  readonly now: Instant;
  readonly frame: ChartFrame;
  readonly pixels: Pixels;
};

function wordsOf(picture: Picture, { zone, now, frame, pixels }: WordsRequest) {
  const { x, y, left, right, top, bottom } = pixels;
  const plot: Patch = { left: left + 2, right: right - 2, top, bottom };
  const steps = picture.stairs.map((stair, place): PlanStep => {
    const swap = swapOfStair(picture, place);
    return {
      left: x(stair.from),
      right: x(stair.to),
      y: y(stair.worth),
      leanEdge: y(stair.leanEdge),
      richEdge: y(stair.richEdge),
      bounds: swap === null ? null : { left: x(swap.from), right: x(swap.to) },
    };
  });
  const behind = drawnBehind(picture, steps, pixels);
  const sides = SIDES.map((side) => ({
    key: side,
    className: styles[`${side}Word`],
    words: [side.toUpperCase()],
    size: frame.small,
    places: placesOfSide(steps, side, { size: frame.small, plot }),
    ...behind.sides,
  }));
  const names = steps.map((step, i) => ({
    key: `step ${step.left}`,
    className: styles.stairName,
    words: stairNames(picture, i, { zone, now }),
    size: frame.body,
    places: placesOfName(steps, step, { size: frame.body, plot }),
    ...behind.names,
  }));
  const wanted: readonly (WordsToPlace & { readonly key: string; readonly className: string | undefined })[] =
    [...sides, ...names];
  const found = freePlaces(wanted, plot, frame.widthOf);
  return wanted.flatMap(({ key, className }, i) => {
    const place = found[i];
    return place == null ? [] : [{ key, className, ...place }];
  });
}

/** The lines and stripes that no words lie on; what they keep off as far as can be: the swaps' bounds, the likely range. */
function drawnBehind(picture: Picture, steps: readonly PlanStep[], { x, y, top, bottom }: Pixels) {
  const { hours, carburettor, swaps } = picture;
  const through = (of: 'ideal' | 'idealLow' | 'idealHigh') =>
    hours.map((hour) => ({ x: x(hour.at), y: y(hour[of][carburettor] ?? 0) }));
  const plan = steps.flatMap(({ left, right, y: at }) => [
    { x: left, y: at },
    { x: right, y: at },
  ]);
  const boxes = steps.filter(hasLane).flatMap(({ left, right, leanEdge, richEdge }): readonly Patch[] => [
    { left, right, top: leanEdge - STRIPES.lean, bottom: leanEdge },
    { left, right, top: richEdge, bottom: richEdge + STRIPES.rich },
  ]);
  const bounds = swaps
    .flatMap(({ from, to }) => [from, to])
    .map((at) => [
      { x: x(at), y: top },
      { x: x(at), y: bottom },
    ]);
  const drawn: Behind = { lines: [through('ideal'), plan], boxes };
  return {
    sides: { drawn, light: [...bounds, through('idealLow'), through('idealHigh')] },
    names: { drawn, light: bounds },
  };
}
