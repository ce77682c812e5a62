import type { Limits } from '@/lib/carb/machine';
import type { SeasonSetup } from '@/lib/trail/season';
import { jetsText } from './settings';

/** Whether the richest choice of a day is still lean: it may be shown, but never as a setting to ride on. */
export function isLeanDay({ warnings, leanest }: SeasonSetup, { lean }: Limits): boolean {
  return leanest < -lean || warnings.some(({ code }) => code === 'no-jet-rich-enough');
}

/** "400"; where that is lean it is named as what it is, so that nobody fits it from the table. */
export function seasonMainText(setup: SeasonSetup, limits: Limits): string {
  const jets = jetsText(setup.setting.mains);
  return isLeanDay(setup, limits) ? `none; ${jets} is lean` : jets;
}

/** What to do on a day for which the jets owned are lean. */
export function leanDaySentence({ condition, setting }: SeasonSetup): string {
  return `${condition.name}: do not hold it wide open on ${jetsText(setting.mains)}. Wait for a warmer day, or put in a larger main first.`;
}
