import type { Setting } from '@/lib/carb/machine';
import type { Plan } from './types';

/** A plan's settings in the order the request gave its runs: what to hand back as `accepted`. */
export function settingsAsGiven(plan: Pick<Plan, 'runs' | 'order'>): readonly Setting[] {
  const settings = new Array<Setting>(plan.order.length);
  for (const { run, setting } of plan.runs) settings[plan.order[run]!] = setting;
  return settings;
}
