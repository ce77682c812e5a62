import type { Setting } from '@/lib/carb/machine';

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

/**
 * The act itself: "Fit 420", "Turn trim to 3", or both. Where the jets were of different sizes every one is named, also
 * where all become alike: a racer who sets them apart must see that they are not any more.
 */
export function actText(from: Setting, to: Setting): string {
  const trimTurns = to.trim !== null && to.trim !== from.trim;
  if (sameJets(from, to)) return trimTurns ? `Turn trim to ${to.trim}` : `Leave ${settingText(to)}`;
  const jets = new Set(from.mains).size > 1 ? to.mains.join('/') : jetsText(to.mains);
  return trimTurns ? `Fit ${jets} and set trim to ${to.trim}` : `Fit ${jets}`;
}

/** Sizes to ask for: "430", or with staggered jets "430/420/430". */
export function sizesText(sizes: readonly number[]): string {
  return sameOrEach(sizes.map(String));
}
