import type { Plan, Worth } from '@/lib/plan/types';
import { timeAtPower } from '@/lib/power/relative-power';
import { formatNumber } from '@/lib/units/format';
import { type Ratio, ratio, second } from '@/lib/units/quantity';
import { counted } from './listing';
import { powerText } from './power-words';

/** "A swap must save 1.5 % power (3 hp) to be worth opening 3 carburettors, ...". */
export function worthSentences(plan: Plan): readonly string[] {
  const { worth, baseline, sortedRuns } = plan;
  const timed = sortedRuns.find(({ typicalSeconds }) => typicalSeconds !== null)?.typicalSeconds ?? null;
  const carburettors = counted(baseline.mains.length, 'carburettor');
  return [
    worth.swap === 0
      ? `A swap is made for any power it saves, though it means opening ${carburettors}.`
      : `A swap must save ${worthText(worth)} to be worth opening ${carburettors}, added up over the runs it serves${timed === null ? '' : `: ${secondsText(worth.swap, timed)}`}.`,
    ...(worth.doubled === true && worth.swap > 0 ? [DOUBLED] : []),
    NEVER_WEIGHED,
  ];
}

const DOUBLED = 'That is twice as much as without a reading: the next one may ask for the old jets back.';
const NEVER_WEIGHED = 'A swap that keeps the lean limit is made whatever it costs.';

/** Length of the run that a worth is told in seconds of, where no run is known. */
const EXAMPLE_SECONDS = 10;

/** What the field for a worth means; `swap` is what counts now, `usual` what counts where the field is empty. */
export function swapWorthHint({ swap, usual, ratedPower }: Worth & { readonly usual: Ratio }): string {
  const empty = `Empty: ${worthText({ swap: usual, ratedPower })}, half a percent for each carburettor to open (common practice, no source).`;
  const now =
    swap === 0
      ? 'At 0 any power is enough.'
      : `${worthText({ swap, ratedPower })} is ${secondsText(swap, EXAMPLE_SECONDS)}.`;
  return `Power a swap must save, added up over the runs it serves, before it is made for power alone; twice that once you read a thermometer at the track. ${empty} ${now} ${NEVER_WEIGHED}`;
}

/** A worth as it was typed, without digits that say nothing. */
function worthText({ swap, ratedPower }: Worth): string {
  const percent = (digits: number) => Number((swap * 100).toFixed(digits));
  return powerText(swap, ratedPower, [0, 1].find((digits) => percent(digits) === percent(2)) ?? 2);
}

/** "0.05 s of a run of 10 s". */
function secondsText(worth: Ratio, seconds: number): string {
  const lost = timeAtPower(second(seconds), ratio(1 - worth)) - seconds;
  const text = lost < 0.005 ? 'less than 0.01' : formatNumber(lost, 2);
  return `${text} s of a run of ${formatNumber(seconds, Number.isInteger(seconds) ? 0 : 1)} s`;
}
