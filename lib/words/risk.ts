import type { Standing } from '@/lib/standing/standing';
import { riskText } from './counts';
import { runName } from './runs';

/** The risk of what is to come, by its worst run: "Lean in 3 of 64 forecasts at worst (Round 6)." */
export function riskSentence({ worst, plan }: Pick<Standing, 'worst' | 'plan'>): string {
  if (worst === null) return 'No run to come.';
  if (worst.leanCount.lean === 0) return `Lean in ${riskText(worst.leanCount)}.`;
  return `Lean in ${riskText(worst.leanCount)} at worst (${runName(plan, worst.run)}).`;
}
