import { sameSetting } from '@/lib/carb/same-setting';
import type { ClockZone } from '@/lib/time/zone';
import type { RideProblem } from '@/lib/trail/ride';
import type { RideFuel } from '@/lib/trail/ride-fuel';
import type { RideMoment, RidePlan } from '@/lib/trail/ride-plan';
import type { RideAirProblem } from '@/lib/trail/ride-series';
import type { StopOption, StopOptions } from '@/lib/trail/ride-stops';
import type { UnitChoice } from '@/lib/units/choice';
import { formatFuel, formatPercent, formatSignedPercent, formatTemperature } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';
import { shortCount } from './counts';
import { actText, jetsText, settingText } from './settings';
import { type Clock, clockText, dateClockText } from './times';
import type { Voice } from './voice';

/** How the rider's places are called; turning points of a track have no name of their own. */
export type PlaceName = (place: number) => string;

/** The ride in a few sentences: the one setting, why, and what it costs where the air is thinnest. */
export function rideCall(answer: RidePlan, voice: Voice, riskLimit: number): readonly string[] {
  const { plan, setting } = answer;
  const lacking = plan.warnings.find(({ code }) => code === 'no-jet-rich-enough');
  if (lacking?.code === 'no-jet-rich-enough')
    return [
      `No jet in the box is rich enough for this ride: ${lacking.sizes === null ? 'none on the list would be' : `borrow ${jetsText(lacking.sizes)}`}.`,
      `Do not hold ${settingText(setting)} wide open in the cold of it.`,
    ];
  const fit = sameSetting(setting, plan.baseline)
    ? `Leave the baseline ${settingText(setting)} in`
    : actText(plan.baseline, setting);
  const safe = plan.runs.every(({ chanceOfLean }) => chanceOfLean <= riskLimit);
  const clock = rideClock(answer, voice);
  return [
    safe
      ? `${fit}: one setting for the whole ride, safe for its thickest air (${momentText(answer.thickest, voice, clock)}).`
      : `${fit}: the best single setting, but it is lean in the thickest air (${momentText(answer.thickest, voice, clock)}).`,
    thinSentence(answer, voice, clock),
  ];
}

function thinSentence({ thinnest, cost }: RidePlan, voice: Voice, clock: Clock): string {
  const where = `Where the air is thinnest (${momentText(thinnest, voice, clock)})`;
  const drift = formatSignedPercent(cost.drift, 1);
  if (cost.drift <= 0.005) return `${where} it is as good as right: ${drift}.`;
  return `${where} it is ${formatPercent(cost.drift, 1)} richer: that costs ${formatPercent(cost.powerLost, 1)} of the power there, beside what thin air takes.`;
}

/** "−14 °F at 07:40". */
export function momentText({ at, air }: RideMoment, { units }: Voice, clock: Clock): string {
  return `${formatTemperature(air.temperature, units)} at ${clockText(at, clock)}`;
}

export function rideClock({ plan }: RidePlan, { zone }: Voice): Clock {
  const from = plan.sortedRuns[0]?.start;
  return from === undefined ? { zone } : { zone, from };
}

/** How sure: the worst leg in counts. */
export function rideSure({ plan }: RidePlan): string {
  const worst = plan.runs.reduce((a, b) => (b.leanCount.lean > a.leanCount.lean ? b : a));
  return `Risk of lean: ${shortCount(worst.leanCount)}.`;
}

/** Jets are swapped in snow for safety alone; the trim, turned from outside in a minute, also against loading up. */
const isNamed = ({ because, act }: StopOption): boolean =>
  because === 'lean' || (because === 'rich' && act === 'trim');

/** The stops that keep the ride safe. One that only saves power is not named. */
export function stopSentences(stops: StopOptions, name: PlaceName): readonly string[] {
  const named = stops.options.filter(isNamed);
  if (named.length === 0) return ['No stop for a swap or a turn would make this ride safer.'];
  return named.map((option) => stopSentence(option, stops.swapMinutes, name));
}

function stopSentence(option: StopOption, swapMinutes: number, name: PlaceName): string {
  const { act, before, after, because } = option;
  const time = act === 'swap' ? `about ${swapMinutes} minutes` : 'a minute';
  const what = `${settingText(before)} to ${name(option.place)}, then ${settingText(after)}`;
  const kind = act === 'swap' ? 'a swap of mains' : 'a turn of the trim';
  return because === 'lean'
    ? `A stop for ${kind} is called for: ${what}. It takes ${time} and keeps the ride out of lean.`
    : `A stop for ${kind} is worth it: ${what}. It takes ${time} and keeps the ride from running too rich.`;
}

/** Fuel for the day, with what it leans on. */
export function fuelSentence({ overBaseline, ofTheAir, litres }: RideFuel, units: UnitChoice): string {
  const over = formatSignedPercent(ratio(overBaseline - 1), 1);
  const air = formatSignedPercent(ratio(ofTheAir - 1), 1);
  const amount = litres === null ? '' : `about ${formatFuel(litres, units)} for the day. `;
  return `${amount}${over} against the baseline at the same throttle and revs: ${air} is the air itself, the rest is the mixture.`;
}

/** Why the places typed are no ride, and what to do next. */
export function rideProblemSentence(problem: RideProblem, name: PlaceName): string {
  switch (problem.code) {
    case 'too-few-places':
      return 'A ride needs two places at least: add where it starts and where it ends.';
    case 'place-too-early':
      return `${name(problem.place)} is reached before the place ahead of it is left. Check the clock times and the stops.`;
    case 'stop-negative':
      return `The stop at ${name(problem.place)} ends before it begins. Check its minutes.`;
    case 'too-many-places':
      return `At most ${problem.limit} places can be planned at once. Leave some out.`;
    case 'ride-too-long':
      return `A ride of more than ${problem.limitHours} hours has a night in it. Plan it day by day.`;
  }
}

export function rideAirProblemSentence(problem: RideAirProblem, zone: ClockZone): string {
  const { start, end, hoursStart, hoursEnd } = problem;
  const ride = `The ride goes from ${dateClockText(start, zone)} to ${dateClockText(end, zone)}`;
  if (hoursStart === null || hoursEnd === null) return `${ride}, and there are no hours. Type two or more.`;
  return `${ride}; the hours only from ${dateClockText(hoursStart, zone)} to ${dateClockText(hoursEnd, zone)}, with no gap longer than six hours. Add hours, or move the ride.`;
}
