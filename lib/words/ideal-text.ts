import { formatNumber } from '@/lib/units/format';

/** Sizes under this are bore marks or pilot-like numbers, where a tenth is worth showing. */
const SMALL = 200;

/** "418" or "418/408/418": the continuous ideal of each carburettor, once where all are the same. */
export function idealText(ideal: readonly number[]): string {
  const texts = ideal.map((size) => formatNumber(size, size < SMALL ? 1 : 0));
  return texts.every((text) => text === texts[0]) ? (texts[0] ?? '') : texts.join('/');
}
