import type { Setting } from '@/lib/carb/machine';
import { sameMains, sameSetting } from '@/lib/carb/same-setting';
import { addMinutes } from '@/lib/time/instant';
import { ratio } from '@/lib/units/quantity';
import type { Grade } from './grade';
import type { GapBefore } from './situation';
import type { LeanCount, Run, RunGrade, Stint, Swap, SwapReason } from './types';

/** An open run as swaps see it. */
export type OpenRun = {
  readonly run: number;
  readonly timed: Run;
  readonly setting: Setting;
  readonly gap: GapBefore;
};

export type SwapsRequest = {
  readonly fitted: Setting;
  readonly open: readonly OpenRun[];
  readonly swapMinutes: number;
  readonly gradeOf: (run: number, setting: Setting) => Grade;
  readonly nameOf: (grade: Grade) => RunGrade;
  readonly countOf: (run: number, setting: Setting) => LeanCount;
};

/** Weighted mean of a value over runs; plain mean where all weights are 0. */
function weightedMean(runs: readonly OpenRun[], pick: (run: OpenRun) => number): number {
  const total = runs.reduce((sum, { timed }) => sum + timed.weight, 0);
  if (total === 0) return runs.reduce((sum, run) => sum + pick(run), 0) / runs.length;
  return runs.reduce((sum, run) => sum + run.timed.weight * pick(run), 0) / total;
}

/** The open runs from `first` on that keep its setting. */
function stintFrom(open: readonly OpenRun[], first: number): readonly OpenRun[] {
  const end = open.findIndex(({ setting }, i) => i > first && !sameSetting(setting, open[first]!.setting));
  return open.slice(first, end === -1 ? open.length : end);
}

/** The open runs a change is made for: to the next swap of the jets, or with a turn of the trim to the next change. */
function servedFrom(open: readonly OpenRun[], first: number, from: Setting): readonly OpenRun[] {
  const { mains } = open[first]!.setting;
  if (sameMains(from.mains, mains)) return stintFrom(open, first);
  const end = open.findIndex(({ setting }, i) => i > first && !sameMains(setting.mains, mains));
  return open.slice(first, end === -1 ? open.length : end);
}

/**
 * The first cause that counts, in the runs the swap is made for: what harms beats what costs. Runs after the next swap
 * are that one's affair: a leaner jet now is no answer to a lean run later.
 */
function reasonFor(request: SwapsRequest, first: number, from: Setting): SwapReason {
  const served = servedFrom(request.open, first, from);
  const firstOf = (name: RunGrade) =>
    served.find(({ run }) => request.nameOf(request.gradeOf(run, from)) === name);
  const lean = firstOf('lean');
  if (lean !== undefined)
    return { code: 'old-turns-lean', run: lean.run, count: request.countOf(lean.run, from) };
  const drowned = firstOf('drowned');
  if (drowned !== undefined) return { code: 'old-drowned', run: drowned.run };
  const rich = firstOf('rich');
  if (rich !== undefined) return { code: 'old-turns-rich', run: rich.run };
  const gain = weightedMean(
    stintFrom(request.open, first),
    ({ run, setting }) => request.gradeOf(run, from).loss - request.gradeOf(run, setting).loss,
  );
  return gain > 0 ? { code: 'power', gain: ratio(gain) } : { code: 'as-accepted' };
}

/** What the stint a swap opens would be on the old setting. */
function skipped(request: SwapsRequest, stint: readonly OpenRun[], from: Setting): Swap['ifSkipped'] {
  const leanest = stint.reduce((a, b) =>
    request.gradeOf(b.run, from).chanceOfLean > request.gradeOf(a.run, from).chanceOfLean ? b : a,
  );
  return {
    chanceOfLean: request.gradeOf(leanest.run, from).chanceOfLean,
    count: request.countOf(leanest.run, from),
    loss: ratio(weightedMean(stint, ({ run }) => request.gradeOf(run, from).loss)),
  };
}

/** All changes of setting, jets and trim, in order. */
export function swapsOf(request: SwapsRequest): readonly Swap[] {
  const { open, fitted } = request;
  return open.flatMap((next, i): Swap[] => {
    const from = open[i - 1]?.setting ?? fitted;
    if (sameSetting(from, next.setting)) return [];
    const kind = sameMains(from.mains, next.setting.mains) ? 'trim' : 'jets';
    return [
      {
        beforeRun: next.run,
        from,
        to: next.setting,
        kind,
        windowStart: next.gap.from,
        latestStart: kind === 'trim' ? next.timed.start : addMinutes(next.timed.start, -request.swapMinutes),
        readyBy: next.timed.start,
        reason: reasonFor(request, i, from),
        ifSkipped: skipped(request, stintFrom(open, i), from),
      },
    ];
  });
}

/** Runs in a row on one setting. */
export function stintsOf(
  runs: readonly { readonly run: number; readonly setting: Setting }[],
): readonly Stint[] {
  const stints: Stint[] = [];
  for (const { run, setting } of runs) {
    const last = stints.at(-1);
    if (last === undefined || !sameSetting(last.setting, setting))
      stints.push({ setting, firstRun: run, lastRun: run });
    else stints[stints.length - 1] = { setting: last.setting, firstRun: last.firstRun, lastRun: run };
  }
  return stints;
}
