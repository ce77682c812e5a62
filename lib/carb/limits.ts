import { ratio } from '@/lib/units/quantity';
import type { Limits } from './machine';

export type LimitChoice = 'race' | 'trail' | 'break-in';

/**
 * Limits by plain choice. Judgement, no source: a racer accepts little rich and stands by the machine; a trail rider
 * has one setting for the whole day and far to walk; a fresh engine must never be lean and may well be rich.
 */
export const LIMIT_CHOICES: Readonly<Record<LimitChoice, Limits>> = {
  race: { lean: ratio(0.02), rich: ratio(0.05), risk: ratio(0.05) },
  trail: { lean: ratio(0.01), rich: ratio(0.08), risk: ratio(0.02) },
  'break-in': { lean: ratio(0), rich: ratio(0.1), risk: ratio(0.01) },
};

/** Which choice a machine's limits are, or null where its numbers are the person's own. */
export function limitChoiceOf(limits: Limits): LimitChoice | null {
  const names: readonly LimitChoice[] = ['race', 'trail', 'break-in'];
  const same = (choice: Limits) =>
    choice.lean === limits.lean && choice.rich === limits.rich && choice.risk === limits.risk;
  return names.find((name) => same(LIMIT_CHOICES[name])) ?? null;
}
