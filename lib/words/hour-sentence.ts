import type { Plan, PlanHour } from '@/lib/plan/types';
import { formatTemperature } from '@/lib/units/format';
import { shortCount } from '@/lib/words/counts';
import { givenWords, idealText } from '@/lib/words/given-air';
import { driftText } from '@/lib/words/grades';
import { planClock } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';
import { clockText } from '@/lib/words/times';
import type { Voice } from '@/lib/words/voice';

type Context = { readonly plan: Plan; readonly voice: Voice; readonly carburettor: number };

/** One hour of the picture, said. */
export function hourSentence(hour: PlanHour, { plan, voice, carburettor }: Context): string {
  const { temperature: before } = givenWords(hour, voice.units);
  const part = (sizes: readonly number[]) => idealText(sizes.slice(carburettor, carburettor + 1));
  const clock = clockText(hour.at, planClock(plan, voice.zone));
  return [
    `${clock}: ${formatTemperature(hour.air.temperature, voice.units)}${before === null ? '' : ` (${before})`},`,
    `ideal ${part(hour.ideal)} (${part(hour.idealLow)} to ${part(hour.idealHigh)}).`,
    `Baseline ${settingText(plan.baseline)}: ${driftText(hour.baselineDrift, hour.baselineState)}.`,
    `As planned: risk of lean ${shortCount(hour.leanCount)}.`,
  ].join(' ');
}
