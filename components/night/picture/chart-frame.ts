import { useMemo } from 'react';
import { textWidthIn } from '@/components/ui/text-width';
import type { Picture } from '@/lib/plan/night-picture';
import type { Instant } from '@/lib/time/instant';
import { formatNumber } from '@/lib/units/format';
import { hasLanes, LANE_COLUMNS, PAPER_WIDTH } from './frame-of-picture';

const ROOT_PX = 16;
/** Air between a name and the axis, or the next lane [px]. */
const AIR = 8;
/** Room on the left of both charts where no name is longer [px]. */
const LEAST_LEFT = 44;
const LEAST_LANE = 36;
/** Right of a chart without lanes: half of the last hour's name. */
const NARROW_RIGHT = 22;

/** What is beside and under the plot, and the type it is written in; both charts and the walk below them share it. */
export type ChartFrame = {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  readonly laneColumn: number;
  /** Sizes of type [px]. */
  readonly small: number;
  readonly body: number;
  readonly widthOf: (words: string, size: number) => number;
  readonly x: (at: Instant | number) => number;
};

export function sizeName(size: number): string {
  return formatNumber(size, Number.isInteger(size) ? 0 : 1);
}

/** Sizes of the type in a chart so wide, on paper as picture-section.module.css has them, in pixels of the chart. */
function typeSizes(width: number) {
  if (width === PAPER_WIDTH) return { small: 17.2, body: 18.7 };
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || ROOT_PX;
  return { small: 0.9375 * rem, body: 1.125 * rem };
}

export function useChartFrame(picture: Picture, width: number): ChartFrame {
  return useMemo(() => {
    const measure = textWidthIn(getComputedStyle(document.body).fontFamily, 700);
    const sizes = typeSizes(width);
    const names = picture.lanes.map(({ size }) => measure(sizeName(size)) * sizes.small);
    const widest = Math.ceil(Math.max(0, ...names));
    const left = Math.max(LEAST_LEFT, widest + AIR);
    const laneColumn = Math.max(LEAST_LANE, widest + AIR);
    const right = hasLanes(width) ? LANE_COLUMNS * laneColumn + 6 : NARROW_RIGHT;
    const plot = Math.max(1, width - left - right);
    const { from, to } = picture;
    return {
      ...sizes,
      width,
      left,
      right,
      laneColumn,
      widthOf: (words: string, size: number) => measure(words) * size,
      x: (at: Instant | number) => left + ((at - from) / (to - from)) * plot,
    };
  }, [picture, width]);
}
