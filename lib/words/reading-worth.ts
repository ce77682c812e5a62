import type { ReadingWorth } from '@/lib/plan/reading-worth';
import type { Plan } from '@/lib/plan/types';
import { formatTemperatureStep } from '@/lib/units/format';
import { kelvinDifference } from '@/lib/units/quantity';
import { planClock, runName } from './runs';
import { clockText } from './times';
import type { Voice } from './voice';

/** "Read the thermometer at 19:35: it would tell Round 3 to ±1.6 °F, not ±3.9 °F."; null where it does not pay. */
export function readingWorthSentence(
  worth: ReadingWorth | null,
  plan: Plan,
  { units, zone }: Voice,
): string | null {
  if (worth === null || !worth.pays) return null;
  const text = (sd: number) => formatTemperatureStep(kelvinDifference(sd), units, 1);
  const clock = clockText(worth.at, planClock(plan, zone));
  return `Read the thermometer at ${clock}: it would tell the temperature of ${runName(plan, worth.run)} to ±${text(worth.sdAfter)}, not ±${text(worth.sdBefore)}.`;
}
