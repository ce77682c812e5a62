import type { Plan } from '@/lib/plan/types';
import type { Mixture, MixtureNow } from '@/lib/standing/mixture';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { formatPercent } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';
import { STATE_WORD } from './grades';
import { runName } from './runs';

/** How what is in stands, in words: "LEAN", then of when, where that is not now, and how far. */
export type MixtureWords = {
  readonly word: string;
  /** "0.6 % leaner", after "Round 1, 19:00:" where no hour says anything of now. */
  readonly drift: string;
  /** " than your baseline": for the eye the gauge says so. */
  readonly than: string;
};

export function mixtureWords(mixture: MixtureNow, plan: Plan, zone: ClockZone): MixtureWords {
  const { at, run, state } = mixture;
  const when = run === null ? '' : `${runName(plan, run)}, ${localClock(at, zone)}: `;
  const { drift, than } = driftWords(mixture);
  return { word: STATE_WORD[state].toUpperCase(), drift: `${when}${drift}`, than };
}

/** "0.6 % leaner than your baseline": how far it drifts. */
function driftWords({ drift }: Mixture): Pick<MixtureWords, 'drift' | 'than'> {
  const percent = formatPercent(ratio(Math.abs(drift)), 1);
  if (percent === formatPercent(ratio(0), 1)) return { drift: 'as baseline', than: '' };
  return { drift: `${percent} ${drift < 0 ? 'leaner' : 'richer'}`, than: ' than your baseline' };
}
