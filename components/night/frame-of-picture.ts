import type { Instant } from '@/lib/time/instant';
import type { Picture } from './picture';

/** Room beside the plot: jet sizes on the left, lanes or sizes on the right. Chart and strip share it. */
export const LEFT = 44;
export const RIGHT = 40;

/** Pixels of a time; the chart and the strip below it must agree on them. */
export function timeScale({ from, to }: Pick<Picture, 'from' | 'to'>, width: number) {
  const plot = Math.max(1, width - LEFT - RIGHT);
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
