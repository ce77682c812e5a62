import type { Picture, Stair } from '@/lib/plan/night-picture';
import type { ClockZone } from '@/lib/time/zone';
import { stairName } from '@/lib/words/stair-name';
import styles from './night-chart.module.css';
import { usePixels } from './use-pixels';

type StairNamesProps = { readonly picture: Picture; readonly zone: ClockZone };

/** Over everything that is drawn, so that no line goes through a word: each jet, each swap at its step, both sides. */
export function StairNames({ picture, zone }: StairNamesProps) {
  const pixels = usePixels();
  if (pixels === null) return null;
  const { x, y, top, bottom, right } = pixels;
  return (
    <g>
      {picture.stairs.slice(-1).map((stair) => (
        <g key={stair.from}>
          {(['lean', 'rich'] as const).map((side) => (
            <text
              key={side}
              className={styles[`${side}Word`]}
              {...(isCurveAbove(picture, stair)
                ? { x: x(stair.from) + 6 }
                : { x: x(stair.to) - 6, textAnchor: 'end' })}
              y={
                side === 'lean'
                  ? Math.max(top + 14, y(stair.leanEdge) - 12)
                  : Math.min(bottom - 6, y(stair.richEdge) + 20)
              }
            >
              {side.toUpperCase()}
            </text>
          ))}
        </g>
      ))}
      {picture.stairs.map((stair, i) => (
        <text key={stair.from} className={styles.stairName} {...placeOfName(picture, i, { x, y, right })}>
          {stairName(picture, i, zone)}
        </text>
      ))}
    </g>
  );
}

/** Whether the curve's likely range reaches over the step's lean edge at its end, where LEAN would stand. */
function isCurveAbove({ hours, carburettor }: Picture, { from, to, leanEdge }: Stair): boolean {
  const last = hours.findLast(({ at }) => at >= from && at <= to);
  return last !== undefined && (last.idealHigh[carburettor] ?? 0) > leanEdge;
}

/** As wide as "Put in 420, 20:00" [px]. */
const STEP_NAME = 160;

/** As high as a name over its step and the stripes at its lean edge [px]. */
const NAME_HEIGHT = 25;

/** Air between a name and its step, above and below it, and how tall the name is [px]. */
const [ABOVE, BELOW, TALL] = [10, 24, 16] as const;

type Pixels = Pick<NonNullable<ReturnType<typeof usePixels>>, 'x' | 'y' | 'right'>;

/** Above its step; below it where the next step, the curve or the stripes go through the words there; before the end of the plot. */
function placeOfName({ stairs, hours, carburettor }: Picture, i: number, { x, y, right }: Pixels) {
  const [stair, next] = [stairs[i], stairs[i + 1]];
  if (stair === undefined) return {};
  const width = i === 0 ? 48 : STEP_NAME;
  const isAtEnd = x(stair.from) + STEP_NAME > right && i > 0;
  const from = isAtEnd ? right - STEP_NAME : x(stair.from);
  const step = y(stair.worth);
  const rises = next !== undefined && next.worth > stair.worth && x(next.from) < from + width;
  const curve = hours
    .filter(({ at }) => x(at) > from - CURVE_STEP && x(at) < from + width + CURVE_STEP)
    .map(({ ideal }) => y(ideal[carburettor] ?? 0));
  const isCrossed = (foot: number): boolean =>
    curve.some((height) => height > foot - TALL - ABOVE && height < foot + ABOVE);
  // No stripe of the lean side goes through it either.
  const isLow = step - y(stair.leanEdge) < NAME_HEIGHT;
  const goesBelow = rises || isLow || (isCrossed(step - ABOVE) && !isCrossed(step + BELOW));
  const place = { y: step + (goesBelow ? BELOW : -ABOVE) };
  return isAtEnd ? { ...place, x: right - 6, textAnchor: 'end' as const } : { ...place, x: from + 8 };
}

/** A curve is known at its hours; one this near may go through what stands beside it [px]. */
const CURVE_STEP = 16;
