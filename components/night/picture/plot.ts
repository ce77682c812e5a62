import type { Instant } from '@/lib/time/instant';
import { LEFT, rightOf, timeScale } from './frame-of-picture';
import type { Picture } from './picture';

/** Rows of the chart in pixels: the numbers of the runs above the plot, the clock below it. */
const RUN_ROW = 26;
const AXIS_ROW = 24;

/** Where the plot stands in the drawing, and the pixels of a time and of a jet size. */
export type Plot = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly height: number;
  /** Held to the plot's edges. */
  readonly x: (at: Instant | number) => number;
  readonly y: (size: number) => number;
};

export function plotOf(picture: Picture, width: number): Plot {
  const height = Math.round(Math.min(420, Math.max(300, width * 0.5)));
  const [left, right] = [LEFT, Math.max(LEFT + 1, width - rightOf(width))];
  const [top, bottom] = [RUN_ROW, height - AXIS_ROW];
  const time = timeScale(picture, width);
  const perSize = (bottom - top) / (picture.most - picture.least);
  return {
    left,
    right,
    top,
    bottom,
    height,
    x: (at) => within(time(at), left, right),
    y: (size) => within(bottom - (size - picture.least) * perSize, top, bottom),
  };
}

function within(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
