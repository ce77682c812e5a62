import type { LeanCount } from '@/lib/plan/types';

/** "3 of 64"; a chance too small for one of them is said to be so. */
export function shortCount({ lean, of }: LeanCount): string {
  return lean === 0 ? `fewer than 1 of ${of}` : `${lean} of ${of}`;
}

/** "3/64", where there is room for no more; "<1/64" for a chance too small for one of them. */
export function fractionCount({ lean, of }: LeanCount): string {
  return lean === 0 ? `<1/${of}` : `${lean}/${of}`;
}

/** "3 of 64 forecasts": a count says how little is known better than a percent does. */
export function riskText(count: LeanCount): string {
  return `${shortCount(count)} forecasts`;
}
