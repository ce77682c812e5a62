import type { Picture } from '@/lib/plan/night-picture';
import type { Instant } from '@/lib/time/instant';

/** Room beside the plot, in pixels; both charts share it. On the left stand temperatures and jet sizes. */
export const LEFT = 44;

/** Lanes side by side on the right of a wide chart, since those of neighbouring jets overlap. */
export const LANE_COLUMNS = 3;
export const LANE_COLUMN = 36;
const WIDE = 640;

/** As it is drawn for paper, wider than on any screen: across the sheet, and no taller than it has room for. */
export const PAPER_WIDTH = 1020;
const PAPER_HEIGHT = 165;

/** Whether there is room for the lanes; where there is none they are left to the table. */
export function hasLanes(width: number): boolean {
  return width >= WIDE;
}

/** On the right stand the lanes where there is room, else half of the last hour's label. */
export function rightOf(width: number): number {
  return !hasLanes(width) ? 22 : LANE_COLUMNS * LANE_COLUMN + 6;
}

/** Half as tall as wide, but readable on a phone and no wall on a desk. */
export function chartHeight(width: number): number {
  if (width === PAPER_WIDTH) return PAPER_HEIGHT;
  return Math.round(Math.min(380, Math.max(300, width * 0.45)));
}

/** The temperature above it: as much as tells how it falls. */
export const TEMPERATURE_HEIGHT = 104;

/** Pixels of a time; the charts and the walk below them must agree on them. */
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
  return [1, 2, 3, 6].find((hours) => hours * perHour >= 48) ?? 12;
}
