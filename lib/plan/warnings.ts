import { normaliseBox } from '@/lib/carb/box';
import { nextSizesUp } from '@/lib/carb/existing-size';
import { sizesAt } from '@/lib/carb/ideal';
import type { Machine } from '@/lib/carb/machine';
import { markingDoubt } from '@/lib/carb/marking-doubt';
import type { Decision } from './decide';
import { leanOver } from './grade';
import { FAR_FROM_BASELINE_LOG } from './judgement';
import { responseCauses } from './machine-need';
import { levelAbove } from './run-odds';
import type { PlanWarning } from './types';
import type { View } from './view';

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
