import type { Ratio } from '@/lib/units/quantity';

/** "3 of 64 forecasts": a count says how little is known better than a percent does. */
export function forecastCount(count: { readonly lean: number; readonly of: number }): string {
  return count.lean === 0 ? `none of ${count.of} forecasts` : `${count.lean} of ${count.of} forecasts`;
}

/** A chance in counts out of `of`: "3 of 64 forecasts"; a chance too small for one of them is said to be so. */
export function chanceCount(chance: Ratio, of: number): string {
  const count = Math.round(chance * of);
  if (count === 0 && chance > 0) return `fewer than 1 of ${of} forecasts`;
  return forecastCount({ lean: count, of });
}
