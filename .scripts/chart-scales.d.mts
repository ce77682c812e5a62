type LinearScale = {
  (value: number): number | undefined;
  domain(): number[];
  domain(ends: readonly number[]): LinearScale;
  range(): number[];
  range(ends: readonly number[]): LinearScale;
  invert(pixel: number): number;
  copy(): LinearScale;
};
export function scaleLinear(): LinearScale;

type PointScale = {
  (value: unknown): number | undefined;
  domain(): unknown[];
  domain(values: readonly unknown[]): PointScale;
  range(): number[];
  range(ends: readonly number[]): PointScale;
  bandwidth(): number;
  copy(): PointScale;
};
export function scalePoint(): PointScale;
