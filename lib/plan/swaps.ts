import type { Setting } from '@/lib/carb/machine';
import { addMinutes, type Instant } from '@/lib/time/instant';
import { ratio } from '@/lib/units/quantity';
import { sameMains, sameSetting } from './candidates';
import { type Grade, leanCountOf } from './grade';
import { TOO_RICH_SHARE } from './judgement';
import type { GapBefore } from './situation';
import type { Crossing, Run, Stint, Swap, SwapReason } from './types';

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
  readonly risk: number;
  /** What chances are counted of. */
  readonly draws: number;
  readonly gradeOf: (run: number, setting: Setting) => Grade;
  /** When a setting leaves its lane, from an instant on. */
  readonly leaves: (setting: Setting, from: Instant) => Crossing | null;
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

/** The first cause that counts: lean beats rich, rich beats power. */
function reasonFor(request: SwapsRequest, stint: readonly OpenRun[], from: Setting): SwapReason {
  const old = stint.map(({ run }) => request.gradeOf(run, from));
  const lean = Math.max(...old.map((grade) => grade.chanceOfLean));
  if (lean > request.risk) return { code: 'old-turns-lean', chance: ratio(lean) };
  const rich = Math.max(...old.map((grade) => grade.chanceOfRich));
  if (rich > TOO_RICH_SHARE) return { code: 'old-turns-rich', chance: ratio(rich) };
  const gain = weightedMean(
    stint,
    ({ run, setting }) => request.gradeOf(run, from).loss - request.gradeOf(run, setting).loss,
  );
  return { code: 'power', gain: ratio(gain) };
}

/** All changes of setting, jets and trim, in order. */
export function swapsOf(request: SwapsRequest): readonly Swap[] {
  const { open, fitted } = request;
  return open.flatMap((next, i): Swap[] => {
    const from = open[i - 1]?.setting ?? fitted;
    if (sameSetting(from, next.setting)) return [];
    const stint = stintFrom(open, i);
    const chanceOfLean = Math.max(...stint.map(({ run }) => request.gradeOf(run, from).chanceOfLean));
    const kind = sameMains(from.mains, next.setting.mains) ? 'trim' : 'jets';
    return [
      {
        beforeRun: next.run,
        from,
        to: next.setting,
        kind,
        windowStart: next.gap.from,
        latestStart: kind === 'trim' ? next.timed.start : addMinutes(next.timed.start, -request.swapMinutes),
        due: request.leaves(from, open[i - 1]?.timed.start ?? next.gap.from),
        reason: reasonFor(request, stint, from),
        ifSkipped: {
          chanceOfLean: ratio(chanceOfLean),
          leanCount: leanCountOf(chanceOfLean, request.risk, request.draws),
          loss: ratio(weightedMean(stint, ({ run }) => request.gradeOf(run, from).loss)),
        },
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
