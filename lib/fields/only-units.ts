import type { UnitChoice } from '@/lib/units/choice';

/** The unit choice alone, from preferences or anything else that holds one: a draft keeps nothing it does not need. */
export function onlyUnits({ temperature, pressure, elevation }: UnitChoice): UnitChoice {
  return { temperature, pressure, elevation };
}
