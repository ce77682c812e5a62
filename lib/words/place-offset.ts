import { offsetAt, type PlaceOffset } from '@/lib/plan/place-offset';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import type { UnitChoice } from '@/lib/units/choice';
import { formatTemperatureStep } from '@/lib/units/format';
import { kelvinDifference } from '@/lib/units/quantity';
import { counted } from './listing';
import { planClock } from './runs';
import { clockText } from './times';
import type { Voice } from './voice';

/** Half of the 80 % range of a normal quantity, in standard deviations. */
const HALF_RANGE = 1.2816;

/**
 * What past nights say about a place, and what of it the plan counts on: "This place ran 3.6 °F under the hours on 5
 * nights. The plan counts on 1.1 °F colder at 20:00 (in 4 of 5 cases between 2.0 °F colder and 0.2 °F colder)."
 */
export function placeOffsetSentence(
  offset: PlaceOffset,
  { plan, used }: { readonly plan: Plan; readonly used: boolean },
  { units, zone }: Voice,
): string {
  const ran = `This place ran ${stepText(offset.ran, units)} ${offset.ran < 0 ? 'under' : 'over'} the hours on ${counted(offset.nights, 'night')}.`;
  if (!used) return `${ran} The plan does not count on it.`;
  const at = atStake(plan);
  const { mean, sd } = offsetAt(offset, at);
  const [low, high] = [mean - HALF_RANGE * sd, mean + HALF_RANGE * sd].map((step) => wayText(step, units));
  const clock = clockText(at, planClock(plan, zone));
  return `${ran} The plan counts on ${wayText(mean, units)} at ${clock} (in 4 of 5 cases between ${low} and ${high}).`;
}

/** The start of the next run that is planned, else of the last. */
function atStake({ runs, sortedRuns }: Plan): Instant {
  const next = runs.find(({ state }) => state === 'planned') ?? runs.at(-1)!;
  return sortedRuns[next.run]!.start;
}

function stepText(step: number, units: UnitChoice): string {
  return formatTemperatureStep(kelvinDifference(Math.abs(step)), units, 1);
}

function wayText(step: number, units: UnitChoice): string {
  return `${stepText(step, units)} ${step < 0 ? 'colder' : 'warmer'}`;
}
