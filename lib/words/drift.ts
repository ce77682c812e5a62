import type { Crossing, Plan } from '@/lib/plan/types';
import { crossingTime } from './crossing-time';
import { STATE_WORD } from './grades';
import { listing } from './listing';
import { planClock } from './runs';
import { settingText } from './settings';
import type { Voice } from './voice';

/** When the baseline setting itself turns lean or rich: "The baseline 410 turns lean about 21:40 (21:10 to 22:20)." */
export function crossingsSentence(plan: Plan, { zone }: Pick<Voice, 'zone'>): string {
  const name = `The baseline ${settingText(plan.baseline)}`;
  const [first] = plan.hours;
  if (first === undefined) return `${name} is not judged: there are no hours.`;
  const starts = `${name} is ${STATE_WORD[first.baselineState]} at the start of the hours`;
  if (plan.crossings.length === 0)
    return `${name} stays ${STATE_WORD[first.baselineState]} through all the hours.`;
  const clock = planClock(plan, zone);
  return `${starts}; it turns ${listing(plan.crossings.map((crossing) => crossingText(crossing, clock)))}.`;
}

function crossingText(crossing: Crossing, clock: ReturnType<typeof planClock>): string {
  return `${STATE_WORD[crossing.to]} ${crossingTime(crossing, clock)}`;
}
