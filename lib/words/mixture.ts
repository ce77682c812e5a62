import type { Plan } from '@/lib/plan/types';
import type { Mixture, MixtureNow } from '@/lib/standing/mixture';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { formatNumber, formatPercent } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';
import { runName } from './runs';

/** "Now, 19:30: right.", or at the start of the next run where no hour says anything of now. */
export function mixtureWords({ at, run, state }: MixtureNow, plan: Plan, zone: ClockZone): string {
  const clock = localClock(at, zone);
  return `${run === null ? 'Now' : runName(plan, run)}, ${clock}: ${state}.`;
}

/** "0.6 % leaner than the baseline, 0.2 of a size": how far it drifts, and what that means in jets. */
export function driftWords({ drift, sizes }: Mixture): string {
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
