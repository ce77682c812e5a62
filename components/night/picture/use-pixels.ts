import { usePlotArea, useXAxisScale, useYAxisScale } from 'recharts';

/** Pixels of the chart around us; null until it has been laid out. */
export function usePixels() {
  const xScale = useXAxisScale();
  const yScale = useYAxisScale();
  const plot = usePlotArea();
  if (xScale === undefined || yScale === undefined || plot === undefined) return null;
  const { x: left, y: top, width, height } = plot;
  const [right, bottom] = [left + width, top + height];
  const within = (value: number | undefined, least: number, most: number) =>
    Math.min(most, Math.max(least, value ?? least));
  return {
    left,
    right,
    top,
    bottom,
    x: (at: number) => within(xScale(at), left, right),
    y: (size: number) => within(yScale(size), top, bottom),
  };
}
