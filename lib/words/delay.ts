import { type Delay, delayOutcome } from '@/lib/plan/delay';
import type { Plan } from '@/lib/plan/types';
import { planClock, runNames } from './runs';
import { clockText } from './times';
import type { Voice } from './voice';

/** Before runs are moved: those for which there would be no call any more, and what to do; null where none is. */
export function delayWarning(plan: Plan, delay: Delay, voice: Pick<Voice, 'zone'>): string | null {
  const { beyond, before, hoursStart, hoursEnd } = delayOutcome(plan, delay);
  const clock = planClock(plan, voice.zone);
  const step = `${Math.abs(delay.minutes)} minutes ${delay.minutes < 0 ? 'earlier' : 'later'}`;
  if (beyond.length > 0)
    return `${step}, ${runNames(plan, beyond)} would be past the end of the hours at ${clockText(hoursEnd, clock)}: no call for ${them(beyond)}. Add hours under Hours, or renew the forecast.`;
  if (before.length > 0)
    return `${step}, ${runNames(plan, before)} would be before the hours begin at ${clockText(hoursStart, clock)}: no call for ${them(before)}. Add hours under Hours, or renew the forecast.`;
  return null;
}

const them = (runs: readonly number[]): string => (runs.length === 1 ? 'it' : 'them');

/** In the form of the hours: how late the night may become; null where two hours are left, the most that is usual. */
export function spareWords(minutes: number): string | null {
  if (minutes >= ENOUGH_MINUTES) return null;
  const left =
    minutes === 0
      ? 'The hours end with the last run, so every delay leaves them'
      : `The hours end ${minutes} minutes after the last run: a longer delay leaves them`;
  return `${left}, and there is no call for what lies outside. Type one more temperature, two hours after the last run.`;
}

/** How far hours should reach past the last run. Judgement: delay is the rule at a race. */
export const ENOUGH_MINUTES = 120;
