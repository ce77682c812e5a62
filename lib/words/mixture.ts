import type { Mixture } from '@/lib/standing/mixture';
import type { Standing } from '@/lib/standing/standing';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { formatPercent } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';
import { STATE_WORD } from './grades';
import { runName } from './runs';

type StandingOfMixture = Pick<Standing, 'mixture' | 'plan' | 'dangers' | 'question'>;

/** How what is in stands, in words: "LEAN", then of when, where that is not now, and how far. */
export type MixtureWords = {
  /** "GOOD now" where something worse is told of what is to come. */
  readonly word: string;
  /** False there: the worse comes first, and nobody may take this word for the answer. */
  readonly first: boolean;
  /** "0.6 % leaner", after "Round 1, 19:00:" where no hour says anything of now. */
  readonly drift: string;
  /** " than your baseline": for the eye the gauge says so. */
  readonly than: string;
};

/** How what is in stands now; null where no hour says so. */
export function mixtureWords(standing: StandingOfMixture, zone: ClockZone): MixtureWords | null {
  const { mixture, plan, dangers, question } = standing;
  if (mixture === null) return null;
  const { at, run, state } = mixture;
  const first = state !== 'right' || (dangers.length === 0 && question === null);
  const when = run === null ? '' : `${runName(plan, run)}, ${localClock(at, zone)}: `;
  const { drift, than } = driftWords(mixture);
  const word = STATE_WORD[state].toUpperCase();
  return { word: first || run !== null ? word : `${word} now`, first, drift: `${when}${drift}`, than };
}

/** "0.6 % leaner than your baseline": how far it drifts. */
function driftWords({ drift }: Mixture): Pick<MixtureWords, 'drift' | 'than'> {
  const percent = formatPercent(ratio(Math.abs(drift)), 1);
  if (percent === formatPercent(ratio(0), 1)) return { drift: 'as baseline', than: '' };
  return { drift: `${percent} ${drift < 0 ? 'leaner' : 'richer'}`, than: ' than your baseline' };
}
