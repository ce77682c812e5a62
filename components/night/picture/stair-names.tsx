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
        <text
          key={stair.from}
          className={styles.stairName}
          {...placeOfName(picture.stairs, i, { x, y, right })}
        >
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

/** Above its step; below it where the next step rises through the words; before the end of the plot. */
function placeOfName(
  stairs: readonly Stair[],
  i: number,
  { x, y, right }: Pick<NonNullable<ReturnType<typeof usePixels>>, 'x' | 'y' | 'right'>,
) {
  const [stair, next] = [stairs[i], stairs[i + 1]];
  if (stair === undefined) return {};
  const from = x(stair.from);
  const rises =
    next !== undefined && next.worth > stair.worth && x(next.from) < from + (i === 0 ? 48 : STEP_NAME);
  // No stripe of the lean side goes through it either.
  const isLow = y(stair.worth) - y(stair.leanEdge) < NAME_HEIGHT;
  const place = { y: y(stair.worth) + (rises || isLow ? 24 : -10) };
  return from + STEP_NAME > right && i > 0
    ? { ...place, x: right - 6, textAnchor: 'end' as const }
    : { ...place, x: from + 8 };
}
