import type { Limits } from '@/lib/carb/machine';
import type { DriftState } from '@/lib/plan/types';
import type { Ratio } from '@/lib/units/quantity';

/** The word for a drift, by the machine's own limits. */
export function stateOf(drift: Ratio, { lean, rich }: Limits): DriftState {
  if (drift < -lean) return 'lean';
  return drift > rich ? 'rich' : 'right';
}
