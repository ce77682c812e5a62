import type { Picture } from '@/lib/plan/night-picture';
import type { Instant } from '@/lib/time/instant';

/** Room beside the plot, in pixels; chart and strip share it. On the left stand jet sizes and percents. */
export const LEFT = 44;

/** Lanes side by side on the right of a wide chart, since those of neighbouring jets overlap. */
export const LANE_COLUMNS = 3;
export const LANE_COLUMN = 30;
const WIDE = 640;

/** On the right stand the lanes where there is room, else only the sizes of the strip. */
export function rightOf(width: number): number {
  return width < WIDE ? 48 : LANE_COLUMNS * LANE_COLUMN + 6;
}

/** Half as tall as wide, but readable on a phone and no wall on a desk. */
export function chartHeight(width: number): number {
  return Math.round(Math.min(420, Math.max(300, width * 0.5)));
}

/** Pixels of a time; the chart and the strip below it must agree on them. */
export function timeScale({ from, to }: Pick<Picture, 'from' | 'to'>, width: number) {
  const plot = Math.max(1, width - LEFT - rightOf(width));
  return (at: Instant | number): number => LEFT + ((at - from) / (to - from)) * plot;
}

/** Every how many hours a label fits beside its neighbour. */
export function hoursPerLabel(picture: Pick<Picture, 'from' | 'to' | 'ticks'>, width: number): number {
  const scale = timeScale(picture, width);
  const [first, second] = picture.ticks;
  if (first === undefined || second === undefined) return 1;
  const perHour = scale(second) - scale(first);
  return [1, 2, 3, 6].find((hours) => hours * perHour >= 44) ?? 12;
}
