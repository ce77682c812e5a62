import type { Needle } from './machine';

export type NeedleAdvice = {
  /** Clip groove from the top, 1 = leanest. */
  readonly groove: number;
  /** The groove before rounding and before the needle ends. */
  readonly grooveWanted: number;
  /** ln of delivered over wanted fuel with that groove: negative is lean. */
  readonly logLeft: number;
  /** True where the needle has no groove that far. */
  readonly beyondNeedle: boolean;
};

/**
 * The leanest groove that is not leaner than allowed in given air.
 *
 *     groove = groove0 + ln need / ln(1 + r)
 *
 * where r is the fuel of one groove; a higher groove number lifts the needle and is richer.
 *
 * @param logNeed ln of fuel wanted over the baseline's
 * @param leanLimit how lean is still right, as a positive share such as 0.02
 */
export function needleFor(needle: Needle, logNeed: number, leanLimit: number): NeedleAdvice {
  const logPerGroove = Math.log1p(needle.richerPerGroove);
  const grooveWanted = needle.groove + logNeed / logPerGroove;
  const leanest = grooveWanted + Math.log1p(-leanLimit) / logPerGroove;
  // A hair of forgiveness keeps rounding noise from asking for a groove more in the baseline's own air.
  const whole = Math.ceil(leanest - 1e-9);
  const groove = Math.min(Math.max(whole, 1), needle.grooves);
  return {
    groove,
    grooveWanted,
    logLeft: (groove - grooveWanted) * logPerGroove,
    beyondNeedle: groove !== whole,
  };
}
