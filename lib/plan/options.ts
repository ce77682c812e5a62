import { ratio } from '@/lib/units/quantity';
import type { PlanOptions } from './types';

/** What a plan is made with where the person says nothing. The worth of a swap and its minutes are judgement. */
export const DEFAULT_OPTIONS: PlanOptions = {
  scenarios: 64,
  seed: 1,
  worthIt: ratio(0.005),
  swapMinutes: 15,
  oneSetting: false,
};
