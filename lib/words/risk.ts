import type { Standing } from '@/lib/standing/standing';
import { shortCount } from './counts';
import { runName } from './runs';

/** The risk of what is to come, by its worst run: "Risk of lean: 3 in 64, Round 6." */
export function riskSentence({ worst, plan }: Pick<Standing, 'worst' | 'plan'>): string {
  if (worst === null) return 'No run to come.';
  if (worst.leanCount.lean === 0) return `Risk of lean: ${shortCount(worst.leanCount)}.`;
  return `Risk of lean: ${shortCount(worst.leanCount)}, ${runName(plan, worst.run)}.`;
}
