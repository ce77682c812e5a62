import type { PlanOptions } from './types';

/** What a plan is made with where the person says nothing. The minutes of a swap are judgement. */
export const DEFAULT_OPTIONS: PlanOptions = {
  scenarios: 64,
  seed: 1,
  worthIt: null,
  swapMinutes: 15,
  oneSetting: false,
};
