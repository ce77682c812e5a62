import { formatNumber, formatSignedPercent } from '@/lib/units/format';
import type { Standing } from './standing';

/** "right, −0.6 %, 0.2 of a size lean": the word first, then the number, then what it means in jets. */
export function driftWords({ state, drift, sizes }: Standing): string {
  return `${state}, ${formatSignedPercent(drift, 1)}${sizesText(sizes)}`;
}

/** Less than a tenth of a size is nothing. */
function sizesText(sizes: number): string {
  const size = Math.abs(sizes);
  if (size < 0.05) return '';
  const side = sizes < 0 ? 'lean' : 'rich';
  return size < 0.95
    ? `, ${formatNumber(size, 1)} of a size ${side}`
    : `, ${formatNumber(size, 1)} sizes ${side}`;
}
