import type { Setting } from '@/lib/carb/machine';
import { formatSizeUp } from '@/lib/units/format';

/** "410", or with staggered jets "410/400/410" from the first carburettor to the last. */
export function jetsText(mains: readonly number[]): string {
  return sameOrEach(mains.map(String));
}

function sameOrEach(jets: readonly string[]): string {
  return new Set(jets).size === 1 ? (jets[0] ?? '') : jets.join('/');
}

/** "410", or with a trim circuit "410, trim 3". */
export function settingText({ mains, trim }: Setting): string {
  return trim === null ? jetsText(mains) : `${jetsText(mains)}, trim ${trim}`;
}

export function sameJets(a: Setting, b: Setting): boolean {
  return a.mains.length === b.mains.length && a.mains.every((main, i) => main === b.mains[i]);
}

export function sameSetting(a: Setting, b: Setting): boolean {
  return sameJets(a, b) && a.trim === b.trim;
}

/** The act itself: "Fit 420", "Turn trim to 3", or both. */
export function actText(from: Setting, to: Setting): string {
  const trimTurns = to.trim !== null && to.trim !== from.trim;
  if (sameJets(from, to)) return trimTurns ? `Turn trim to ${to.trim}` : `Leave ${settingText(to)}`;
  return trimTurns ? `Fit ${jetsText(to.mains)} and set trim to ${to.trim}` : `Fit ${jetsText(to.mains)}`;
}

/** The smallest jets that would do, never rounded to a leaner one: "424" for 423.4. */
export function atLeastText(sizes: readonly number[]): string {
  return sameOrEach(sizes.map(formatSizeUp));
}
