import { type Ratio, ratio } from '@/lib/units/quantity';
import type { Machine } from './machine';

/** Power that must be saved before one carburettor is opened for it. Judgement; common practice, no source. */
const WORTH_OF_ONE = 0.005;

/**
 * What a swap costs by hand, as the power it must save: it grows with the carburettors to be stripped, and nothing else
 * is known of the work.
 */
export function usualSwapWorth(carburettors: number): Ratio {
  return ratio(WORTH_OF_ONE * carburettors);
}

/** The person's own worth of a swap, or the usual one. */
export function swapWorth({
  swapWorth: own,
  carburettors,
}: Pick<Machine, 'swapWorth' | 'carburettors'>): Ratio {
  return own ?? usualSwapWorth(carburettors.length);
}
