/** How HTML marks the parts that are drawn in the browser only. */
export const ONLY_AWAKE = 'only-awake';

/** Thrown while a page is drawn by the build, by what only a browser can draw; what stands in its place is drawn instead. */
export class OnlyAwake extends Error {
  readonly digest = ONLY_AWAKE;
}
