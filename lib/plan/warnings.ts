import { normaliseBox } from '@/lib/carb/box';
import { nextSizesUp } from '@/lib/carb/existing-size';
import { sizesAt } from '@/lib/carb/ideal';
import type { Machine } from '@/lib/carb/machine';
import { markingDoubt } from '@/lib/carb/marking-doubt';
import { HOUR_MS } from '@/lib/time/instant';
import type { Decision } from './decide';
import { clearCalmWarnings, seasonWarnings } from './forecast-warnings';
import { leanOver } from './grade';
import { FAR_FROM_BASELINE_LOG, LONGEST_QUIET_GAP_HOURS } from './judgement';
import { responseCauses } from './machine-need';
import type { PreparedNight } from './night';
import { levelAbove } from './run-odds';
import type { PlanWarning } from './types';
import type { View } from './view';

/** Warnings about the hours and the runs, the same for every machine. */
export function nightWarnings(night: PreparedNight): readonly PlanWarning[] {
  return [
    ...orderWarnings(night),
    ...coverageWarnings(night),
    ...gapWarnings(night),
    ...pressureWarnings(night),
    ...seasonWarnings(night),
    ...clearCalmWarnings(night),
    ...night.corrected.warnings,
  ];
}

function orderWarnings({ order, sortedRuns }: PreparedNight): readonly PlanWarning[] {
  const reordered = order.some((given, i) => given !== i);
  const overlaps = sortedRuns.flatMap((run, i): PlanWarning[] => {
    const other = sortedRuns.findIndex((earlier, j) => j < i && earlier.end > run.start);
    return other === -1 ? [] : [{ code: 'runs-overlap', run: i, other }];
  });
  return reordered ? [{ code: 'runs-reordered' }, ...overlaps] : overlaps;
}

function coverageWarnings({ coverage, series }: PreparedNight): readonly PlanWarning[] {
  const [hoursStart, hoursEnd] = [series.hours[0]!.at, series.hours.at(-1)!.at];
  return coverage.flatMap((covered, run): PlanWarning[] => {
    if (covered === 'covered') return [];
    return covered === 'after'
      ? [{ code: 'run-beyond-hours', run, hoursEnd }]
      : [{ code: 'run-before-hours', run, hoursStart }];
  });
}

/** Long gaps between hours that matter to a run: something had to be guessed in between, here or before it came here. */
function gapWarnings({ series, sortedRuns }: PreparedNight): readonly PlanWarning[] {
  const told = series.hours.filter(({ origin }) => origin !== 'filled');
  return told.slice(1).flatMap((hour, i): PlanWarning[] => {
    const before = told[i]!;
    const long = hour.at - before.at > LONGEST_QUIET_GAP_HOURS * HOUR_MS;
    const matters = sortedRuns.some((run) => run.start < hour.at && run.end > before.at);
    return long && matters ? [{ code: 'gap-in-hours', from: before.at, to: hour.at }] : [];
  });
}

function pressureWarnings({ series, corrected }: PreparedNight): readonly PlanWarning[] {
  const estimated = series.hours.some((hour) => hour.pressureFrom === 'standard');
  return estimated && !corrected.pressureRead ? [{ code: 'pressure-is-estimate' }] : [];
}

/** Warnings about this machine's box, baseline and gaps. */
export function machineWarnings(view: View, decision: Decision, swapMinutes: number): readonly PlanWarning[] {
  return [
    ...markingWarnings(view.machine),
    ...baselineWarnings(view, decision),
    ...decision.open.flatMap((_, i) => runWarnings(view, decision, { i, swapMinutes })),
  ];
}

function markingWarnings(machine: Machine): readonly PlanWarning[] {
  const doubt = machine.markingSure === true ? null : markingDoubt(machine);
  return doubt === null ? [] : [{ code: 'marking-in-doubt', doubt }];
}

function baselineWarnings({ machine, need, breathed }: View, { open }: Decision): readonly PlanWarning[] {
  const owned = new Set(normaliseBox(machine.box).map(({ size }) => size));
  const missing = [...new Set(machine.carburettors.map(({ main }) => main))].filter(
    (main) => !owned.has(main),
  );
  const far = open.flatMap(({ run }): PlanWarning[] => {
    const causes = responseCauses(need, breathed.windows[run]!, 0);
    const sd = Math.hypot(causes.response, causes.responseOther);
    return sd > FAR_FROM_BASELINE_LOG ? [{ code: 'far-from-baseline-air', run }] : [];
  });
  return [...missing.map((size): PlanWarning => ({ code: 'baseline-jet-not-in-box', size })), ...far];
}

/** What an open run's jets cannot do, and whether it is the box or the time that lacks. */
function runWarnings(
  { machine, odds, judge }: View,
  { candidates, choice, open, steady }: Decision,
  at: { readonly i: number; readonly swapMinutes: number },
): readonly PlanWarning[] {
  const { i, swapMinutes } = at;
  const { run } = open[i]!;
  // Rounded to the richer step: the smallest jets that exist and keep the lean limit.
  const sizes = () =>
    nextSizesUp(
      machine,
      sizesAt(machine, levelAbove(odds[run]!, machine.limits.risk) + Math.log1p(-machine.limits.lean)),
    );
  const first = i * choice.candidates;
  const lean = choice.lean.subarray(first, first + choice.candidates);
  const rich = choice.rich.subarray(first, first + choice.candidates);
  if (!lean.includes(0)) {
    const tooLean = candidates.some((each) => leanOver(odds[run]!, each, judge) > 0);
    return [{ code: tooLean ? 'no-jet-rich-enough' : 'no-jet-lean-enough', run, sizes: sizes() }];
  }
  const isGood = (candidate: number) => lean[candidate] === 0 && rich[candidate] === 0;
  if (isGood(steady.plan[i]!)) return [];
  if (!lean.some((_, candidate) => isGood(candidate)))
    return [{ code: 'no-jet-lean-enough', run, sizes: sizes() }];
  // Where the gap before this run would do, it is the one after it that ties two runs together.
  const short = open[open[i]!.gap.fits === 'swap' ? i + 1 : i];
  if (short === undefined || short.gap.fits === 'swap') return [];
  const gapMinutes = short.gap.minutes;
  return [{ code: 'swap-does-not-fit', run: short.run, gapMinutes, swapMinutes }];
}
