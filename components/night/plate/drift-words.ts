import { formatNumber, formatPercent } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';
import type { Standing } from './standing';

/** "0.6 % leaner than the baseline, 0.2 of a size": how far it drifts, and what that means in jets. */
export function driftWords({ drift, sizes }: Standing): string {
  const percent = formatPercent(ratio(Math.abs(drift)), 1);
  if (percent === formatPercent(ratio(0), 1)) return 'as the baseline';
  return `${percent} ${drift < 0 ? 'leaner' : 'richer'} than the baseline${sizesText(sizes)}`;
}

/** Less than a tenth of a size is nothing. */
function sizesText(sizes: number): string {
  const size = Math.abs(sizes);
  if (size < 0.05) return '';
  return size < 0.95 ? `, ${formatNumber(size, 1)} of a size` : `, ${formatNumber(size, 1)} sizes`;
}
