import type { Setting } from '@/lib/carb/machine';
import { sameMains } from '@/lib/carb/same-setting';

/** "410", or with staggered jets "410 400 410" from the first carburettor to the last. */
export function jetsText(mains: readonly number[]): string {
  return new Set(mains).size === 1 ? String(mains[0]) : mains.join(' ');
}

/** "410", or with a trim circuit "410, trim 3". */
export function settingText({ mains, trim }: Setting): string {
  return trim === null ? jetsText(mains) : `${jetsText(mains)}, trim ${trim}`;
}

/** The first piece of an act with jets in it. */
export const PUT_IN = 'Put in';

/** A piece of an act: words that stay the same, or a number that is another one than before. */
export type ActPart = { readonly text: string; readonly changed: boolean };

/**
 * The act itself: "Put in 420", "Turn trim to 3", or both. Where the jets were of different sizes every one is named, also
 * where all become alike: a racer who sets them apart must see that they are not any more.
 */
export function actText(from: Setting, to: Setting): string {
  return actParts(from, to)
    .map(({ text }) => text)
    .join(' ');
}

/** The same in pieces, so that the numbers that change can be marked. */
export function actParts(from: Setting, to: Setting): readonly ActPart[] {
  const words = (text: string): ActPart => ({ text, changed: false });
  const trimTurns = to.trim !== null && to.trim !== from.trim;
  const trim = { text: String(to.trim), changed: true };
  if (sameMains(from.mains, to.mains))
    return trimTurns ? [words('Turn trim to'), trim] : [words(`Leave ${settingText(to)}`)];
  const alike = new Set(from.mains).size <= 1 && new Set(to.mains).size === 1;
  const jets = alike
    ? [{ text: jetsText(to.mains), changed: true }]
    : to.mains.map((size, i) => ({ text: String(size), changed: size !== from.mains[i] }));
  return [words(PUT_IN), ...jets, ...(trimTurns ? [words('and set trim to'), trim] : [])];
}
