import type { ContractReason } from '@/lib/contract/problem';
import { formatNumber } from '@/lib/units/format';
import { airProblemSentence } from './air-problems';
import { hardwareProblemSentence } from './hardware';
import { planProblemSentence } from './plan-problems';
import { dateClockText } from './times';
import type { Voice } from './voice';

/** What is wrong with a value that was typed, pasted, loaded or sent. */
export function contractProblemSentence(
  reason: ContractReason,
  { zone, units, runNames = [] }: Voice & { readonly runNames?: readonly string[] },
): string {
  switch (reason.code) {
    case 'field':
      return reason.message;
    case 'same-hour-twice':
      return `${dateClockText(reason.at, zone)} is there twice. Keep the one you believe.`;
    case 'jet-not-in-list':
      return `Jet ${reason.size} is not in your list of jets, so its area is unknown. Add it to the list.`;
    case 'too-few-jets-listed':
      return 'A list of jets needs two at least. Add jets with their areas.';
    case 'jet-not-positive':
      return `Jet ${reason.size} with area ${reason.area}: both must be greater than 0. Check the two numbers.`;
    case 'size-listed-twice':
      return `Jet ${reason.size} is in the list twice. Keep one area for it.`;
    case 'area-not-rising':
      return `Jet ${reason.next} has no larger area than jet ${reason.size}, though its number is larger. Check the areas.`;
    case 'mains-do-not-fit':
      return `${reason.mains} jets are named for ${reason.carburettors} carburettors. Name one for each.`;
    case 'trim-not-there':
      return 'A trim position is named, but the machine has no trim circuit. Leave it out, or describe the circuit.';
    case 'trim-out-of-range':
      return `Trim ${reason.trim} does not exist: this circuit goes from ${reason.lowest} to ${reason.highest}. Choose one of these.`;
    case 'no-such-run':
      return `There is no run ${reason.run}: the event has ${reason.runs}, counted from 0. Name one of these.`;
    case 'event-too-long':
      return `The runs span ${formatNumber(reason.days)} days; one event may span ${reason.limit}. Check the years and months.`;
    case 'hours-too-far-apart':
      return `The hours span ${formatNumber(reason.days)} days; one event may have ${reason.limit}. Check the years and months.`;
    case 'amount-missing':
    case 'amount-out-of-range':
      return hardwareProblemSentence(reason);
    case 'run-made-twice':
      return `Run ${reason.run} is named as made twice. Keep the setting it was made with.`;
    case 'settings-do-not-match-runs':
      return `${reason.settings} settings are given for ${reason.runs} runs. Give one for each.`;
    case 'temperature-out-of-range':
    case 'pressure-out-of-range':
    case 'elevation-out-of-range':
    case 'humidity-out-of-range':
    case 'dew-point-above-temperature':
    case 'sea-level-number-as-station':
    case 'pressure-too-low-for-elevation':
      return airProblemSentence(reason, units);
    default:
      return planProblemSentence(reason, { zone, runNames });
  }
}
