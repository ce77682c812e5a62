import { normaliseBox } from '@/lib/carb/box';
import { sizesAt } from '@/lib/carb/ideal';
import type { Machine } from '@/lib/carb/machine';
import { HOUR_MS } from '@/lib/time/instant';
import type { Choice } from './choice';
import { FAR_FROM_BASELINE_LOG, LONGEST_QUIET_GAP_HOURS } from './judgement';
import { type MachineNeed, responseCauses } from './machine-need';
import type { Breathed, Night } from './night';
import { levelAbove, type RunOdds } from './run-odds';
import type { Situation } from './situation';
import type { PlanWarning } from './types';

/** Warnings about the hours and the runs, the same for every machine. */
export function nightWarnings(night: Night): readonly PlanWarning[] {
  return [
    ...orderWarnings(night),
    ...coverageWarnings(night),
    ...gapWarnings(night),
    ...pressureWarnings(night),
    ...night.corrected.warnings,
  ];
}

function orderWarnings({ order, sortedRuns }: Night): readonly PlanWarning[] {
  const reordered = order.some((given, i) => given !== i);
  const overlaps = sortedRuns.flatMap((run, i): PlanWarning[] => {
    const other = sortedRuns.findIndex((earlier, j) => j < i && earlier.end > run.start);
    return other === -1 ? [] : [{ code: 'runs-overlap', run: i, other }];
  });
  return reordered ? [{ code: 'runs-reordered' }, ...overlaps] : overlaps;
}

function coverageWarnings({ coverage, series }: Night): readonly PlanWarning[] {
  const [hoursStart, hoursEnd] = [series.hours[0]!.at, series.hours.at(-1)!.at];
  return coverage.flatMap((covered, run): PlanWarning[] => {
    if (covered === 'covered') return [];
    return covered === 'after'
      ? [{ code: 'run-beyond-hours', run, hoursEnd }]
      : [{ code: 'run-before-hours', run, hoursStart }];
  });
}

/** Long gaps between hours that matter to a run: something had to be guessed in between. */
function gapWarnings({ series, sortedRuns }: Night): readonly PlanWarning[] {
  return series.hours.slice(1).flatMap((hour, i): PlanWarning[] => {
    const before = series.hours[i]!;
    const long = hour.at - before.at > LONGEST_QUIET_GAP_HOURS * HOUR_MS;
    const matters = sortedRuns.some((run) => run.start < hour.at && run.end > before.at);
    return long && matters ? [{ code: 'gap-in-hours', from: before.at, to: hour.at }] : [];
  });
}

function pressureWarnings({ series, corrected }: Night): readonly PlanWarning[] {
  const estimated = series.hours.some((hour) => hour.pressureFrom === 'standard');
  return estimated && !corrected.pressureRead ? [{ code: 'pressure-is-estimate' }] : [];
}

export type MachineWarningsRequest = {
  readonly machine: Machine;
  readonly need: MachineNeed;
  readonly night: Night;
  readonly breathed: Breathed;
  readonly situation: Situation;
  readonly swapMinutes: number;
  readonly choice: Choice;
  readonly odds: readonly RunOdds[];
  readonly plan: readonly number[];
};

/** Warnings about this machine's box, baseline and gaps. */
export function machineWarnings(request: MachineWarningsRequest): readonly PlanWarning[] {
  return [...baselineWarnings(request), ...request.situation.open.flatMap((_, i) => runWarnings(request, i))];
}

function baselineWarnings({
  machine,
  need,
  breathed,
  situation,
}: MachineWarningsRequest): readonly PlanWarning[] {
  const owned = new Set(normaliseBox(machine.box).map(({ size }) => size));
  const missing = [...new Set(machine.carburettors.map(({ main }) => main))].filter(
    (main) => !owned.has(main),
  );
  const far = situation.open.flatMap((run): PlanWarning[] => {
    const causes = responseCauses(need, breathed.windows[run]!, 0);
    const sd = Math.hypot(causes.response, causes.responseOther);
    return sd > FAR_FROM_BASELINE_LOG ? [{ code: 'far-from-baseline-air', run }] : [];
  });
  return [...missing.map((size): PlanWarning => ({ code: 'baseline-jet-not-in-box', size })), ...far];
}

/** What an open run's jets cannot do, and whether it is the box or the time that lacks. */
function runWarnings(request: MachineWarningsRequest, i: number): readonly PlanWarning[] {
  const { machine, choice, odds, plan, situation } = request;
  const run = situation.open[i]!;
  const at = (candidate: number) => i * choice.candidates + candidate;
  const all = Array.from({ length: choice.candidates }, (_, candidate) => candidate);
  const neededSizes = () =>
    sizesAt(machine, levelAbove(odds[i]!, machine.limits.risk) + Math.log1p(-machine.limits.lean));
  const safe = all.filter((candidate) => choice.lean[at(candidate)] === 0);
  if (safe.length === 0) return [{ code: 'no-jet-rich-enough', run, neededSizes: neededSizes() }];
  const good = safe.filter((candidate) => choice.rich[at(candidate)] === 0);
  if (good.length === 0) return [{ code: 'no-jet-lean-enough', run, neededSizes: neededSizes() }];
  if (good.includes(plan[i]!)) return [];
  // Where the gap before this run would do, it is the one after it that ties two runs together.
  const short = situation.gaps[i]!.fits === 'swap' ? i + 1 : i;
  const gap = situation.gaps[short];
  if (gap === undefined || gap.fits === 'swap') return [];
  return [
    {
      code: 'swap-does-not-fit',
      run: situation.open[short]!,
      gapMinutes: gap.minutes,
      swapMinutes: request.swapMinutes,
    },
  ];
}
