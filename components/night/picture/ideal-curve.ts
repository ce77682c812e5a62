import { shapePreservingCurve } from '@/lib/hours/interpolate';
import type { PlanHour } from '@/lib/plan/types';
import type { Picture } from './picture';
import type { Plot } from './plot';

/** Pixels from one point of a drawn curve to the next: too few to see a corner. */
const STEP = 2;

type Edge = 'ideal' | 'idealLow' | 'idealHigh';
type PixelPoint = readonly [x: number, y: number];

/** The size the air asks for, hour to hour, as pixels of the plot; smooth, and never beyond the hours beside it. */
function curvePixels(picture: Picture, plot: Plot, edge: Edge): readonly PixelPoint[] {
  const points = picture.hours.flatMap((hour) => pointOf(hour, hour[edge][picture.carburettor]));
  const curve = shapePreservingCurve(points);
  const steps = Math.max(1, Math.ceil((plot.right - plot.left) / STEP));
  return Array.from({ length: steps + 1 }, (_, i) => i / steps).flatMap((share) => {
    const at = picture.from + share * (picture.to - picture.from);
    const size = curve(at);
    return size === null ? [] : [[plot.x(at), plot.y(size)] as const];
  });
}

const pointOf = ({ at }: PlanHour, size: number | undefined) =>
  size === undefined ? [] : [{ x: at, y: size }];

const pathOf = (points: readonly PixelPoint[]): string =>
  points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L');

/** The curve of the ideal size. */
export function idealPath(picture: Picture, plot: Plot): string {
  return `M${pathOf(curvePixels(picture, plot, 'ideal'))}`;
}

/** Its likely range: along the upper edge and back along the lower one. */
export function fanPath(picture: Picture, plot: Plot): string {
  const high = curvePixels(picture, plot, 'idealHigh');
  const low = curvePixels(picture, plot, 'idealLow').toReversed();
  return `M${pathOf([...high, ...low])}Z`;
}
