/** The middle value, or between the two middle ones; NaN of nothing. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (index: number): number => sorted[index] ?? Number.NaN;
  return (at(Math.floor((sorted.length - 1) / 2)) + at(Math.ceil((sorted.length - 1) / 2))) / 2;
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Standard deviation about the mean. */
export function deviation(values: readonly number[]): number {
  return Math.sqrt(covariance(values, values));
}

/** Least squares line of y over x: its slope, and the share of the variance of y that goes with x. */
export function line(
  x: readonly number[],
  y: readonly number[],
): { readonly slope: number; readonly share: number } {
  const both = covariance(x, y);
  return {
    slope: both / covariance(x, x),
    share: both ** 2 / (covariance(x, x) * covariance(y, y)),
  };
}

function covariance(x: readonly number[], y: readonly number[]): number {
  const [middleX, middleY] = [mean(x), mean(y)];
  return mean(x.map((value, i) => (value - middleX) * ((y[i] ?? Number.NaN) - middleY)));
}
