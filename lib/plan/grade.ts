import type { Machine } from '@/lib/carb/machine';
import { type Ratio, ratio } from '@/lib/units/quantity';
import type { Candidate } from './candidates';
import { chanceAbove, chanceBelow, countAbove, meanExcess, meanLoss, type RunOdds } from './run-odds';

/** How one setting does in one run. */
export type Grade = {
  readonly chanceOfLean: Ratio;
  readonly chanceOfRich: Ratio;
  /** Mean power lost against the ideal mixture, mean of the carburettors. */
  readonly loss: Ratio;
  /** Mean log area that the run's leanest instant lacks beyond the lean limit. */
  readonly lack: number;
};

/** What a setting passes in each carburettor: leanest and richest count for the limits. */
export type Delivered = Pick<Candidate, 'delivered' | 'leanest' | 'richest'>;

type Judge = Pick<Machine, 'limits' | 'richPowerLoss'>;

/** The ideal above which a setting is lean: drift < −lean ⇔ L > delivered − ln(1 − lean). */
export function leanThreshold(delivered: Delivered, { limits }: Judge): number {
  return delivered.leanest - Math.log1p(-limits.lean);
}

/** The ideal below which a setting is too rich: drift > rich ⇔ L < delivered − ln(1 + rich). */
export function richThreshold(delivered: Delivered, { limits }: Judge): number {
  return delivered.richest - Math.log1p(limits.rich);
}

/** Chances and loss, taking the leanest and the richest instant of the run and not its mean. */
export function gradeOf(odds: RunOdds, delivered: Delivered, judge: Judge): Grade {
  const lean = leanThreshold(delivered, judge);
  const losses = new Map<number, number>();
  let loss = 0;
  for (const each of delivered.delivered) {
    const known = losses.get(each) ?? meanLoss(odds, each, judge.richPowerLoss);
    losses.set(each, known);
    loss += known / delivered.delivered.length;
  }
  return {
    chanceOfLean: ratio(chanceAbove(odds, lean)),
    chanceOfRich: ratio(chanceBelow(odds, richThreshold(delivered, judge))),
    loss: ratio(loss),
    lack: meanExcess(odds, lean),
  };
}

export function leanCountOf(odds: RunOdds, delivered: Delivered, judge: Judge) {
  return { lean: countAbove(odds, leanThreshold(delivered, judge)), of: odds.draws };
}
