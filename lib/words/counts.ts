import type { RunPlan } from '@/lib/plan/types';
import type { Ratio } from '@/lib/units/quantity';

/** "3 of 64"; a chance too small for one of them is said to be so. */
export function shortCount({ lean, of }: RunPlan['leanCount']): string {
  return lean === 0 ? `fewer than 1 of ${of}` : `${lean} of ${of}`;
}

/** "3 of 64 forecasts": a count says how little is known better than a percent does. */
export function forecastCount(count: RunPlan['leanCount']): string {
  return `${shortCount(count)} forecasts`;
}

/** A chance without a limit in counts out of `of`: "3 of 64 forecasts". */
export function chanceCount(chance: Ratio, of: number): string {
  return forecastCount({ lean: Math.round(chance * of), of });
}
