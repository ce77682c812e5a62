import type { LeanCount } from '@/lib/plan/types';

/** "3 in 64"; a chance too small for one of them is said to be so. */
export function shortCount({ lean, of }: LeanCount): string {
  return lean === 0 ? `under 1 in ${of}` : `${lean} in ${of}`;
}

/** "3/64", where there is room for no more; "<1/64" for a chance too small for one of them. */
export function fractionCount({ lean, of }: LeanCount): string {
  return lean === 0 ? `<1/${of}` : `${lean}/${of}`;
}
