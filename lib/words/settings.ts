import type { Setting } from '@/lib/carb/machine';
import { sameMains } from '@/lib/carb/same-setting';

/** "410", or with staggered jets "410/400/410" from the first carburettor to the last. */
export function jetsText(mains: readonly number[]): string {
  return new Set(mains).size === 1 ? String(mains[0]) : mains.join('/');
}

/** "410", or with a trim circuit "410, trim 3". */
export function settingText({ mains, trim }: Setting): string {
  return trim === null ? jetsText(mains) : `${jetsText(mains)}, trim ${trim}`;
}

/**
 * The act itself: "Fit 420", "Turn trim to 3", or both. Where the jets were of different sizes every one is named, also
 * where all become alike: a racer who sets them apart must see that they are not any more.
 */
export function actText(from: Setting, to: Setting): string {
  const trimTurns = to.trim !== null && to.trim !== from.trim;
  if (sameMains(from.mains, to.mains))
    return trimTurns ? `Turn trim to ${to.trim}` : `Leave ${settingText(to)}`;
  const jets = new Set(from.mains).size > 1 ? to.mains.join('/') : jetsText(to.mains);
  return trimTurns ? `Fit ${jets} and set trim to ${to.trim}` : `Fit ${jets}`;
}
