import type { Machine } from '@/lib/carb/machine';
import { type Ratio, ratio } from '@/lib/units/quantity';
import type { Candidate } from './candidates';
import { MOST_LOSS_THAT_RUNS, TOO_RICH_SHARE } from './judgement';
import { normalQuantile } from './normal';
import { chanceAbove, chanceBelow, isSurelyRare, meanExcess, meanLoss, type RunOdds } from './run-odds';
import type { LeanCount, RunGrade } from './types';

/** How one setting does in one run. */
export type Grade = {
  readonly chanceOfLean: Ratio;
  readonly chanceOfRich: Ratio;
  /** Mean power lost against the ideal mixture, mean of the carburettors. */
  readonly loss: Ratio;
};

/** What a setting passes in each carburettor: leanest and richest count for the limits. */
export type Delivered = Pick<Candidate, 'delivered' | 'leanest' | 'richest'>;

/** The machine's limits, with where its lean risk lies on the normal curve. */
export type Judge = Pick<Machine, 'limits' | 'richPowerLoss'> & { readonly leanTail: number };

export function judgeOf({ limits, richPowerLoss }: Machine): Judge {
  return { limits, richPowerLoss, leanTail: -normalQuantile(limits.risk) };
}

const RICH_TAIL = -normalQuantile(TOO_RICH_SHARE);

/** The ideal above which a setting is lean: drift < −lean ⇔ L > delivered − ln(1 − lean). */
export function leanThreshold(delivered: Delivered, { limits }: Judge): number {
  return delivered.leanest - Math.log1p(-limits.lean);
}

/** The ideal below which a setting is too rich: drift > rich ⇔ L < delivered − ln(1 + rich). */
export function richThreshold(delivered: Delivered, { limits }: Judge): number {
  return delivered.richest - Math.log1p(limits.rich);
}

/** Mean power lost over the run, mean of the carburettors. */
export function lossOf(odds: RunOdds, { delivered }: Delivered, { richPowerLoss }: Judge): number {
  let loss = 0;
  for (const each of delivered) loss += meanLoss(odds, each, richPowerLoss);
  return loss / delivered.length;
}

/** Chances and loss, taking the leanest and the richest instant of the run and not its mean. */
export function gradeOf(odds: RunOdds, delivered: Delivered, judge: Judge): Grade {
  return {
    chanceOfLean: ratio(chanceAbove(odds, leanThreshold(delivered, judge))),
    chanceOfRich: ratio(chanceBelow(odds, richThreshold(delivered, judge))),
    loss: ratio(lossOf(odds, delivered, judge)),
  };
}

/**
 * Lean risk above its limit, with how much fuel is lacking, so that where no jet is rich enough the richest is the
 * least bad. Nothing where the limit is kept.
 */
export function leanOver(odds: RunOdds, delivered: Delivered, judge: Judge): number {
  const threshold = leanThreshold(delivered, judge);
  if (isSurelyRare(odds, { threshold, side: 1, tail: judge.leanTail })) return 0;
  const { risk } = judge.limits;
  const chance = chanceAbove(odds, threshold);
  return chance > risk ? chance - risk + meanExcess(odds, threshold) : 0;
}

/** Lean risk above its limit were the ideal higher by `room` (as a log of area) throughout. */
export function isLeanWithin(odds: RunOdds, delivered: Delivered, judge: Judge, room: number): boolean {
  const threshold = leanThreshold(delivered, judge) - room;
  if (isSurelyRare(odds, { threshold, side: 1, tail: judge.leanTail })) return false;
  return chanceAbove(odds, threshold) > judge.limits.risk;
}

/** Too rich in most cases. */
export function isTooRich(odds: RunOdds, delivered: Delivered, judge: Judge): boolean {
  const threshold = richThreshold(delivered, judge);
  if (isSurelyRare(odds, { threshold, side: -1, tail: RICH_TAIL })) return false;
  // Every draw then is too rich up to U0 at least, which is more than half of the cases.
  if (odds.bounds.risesOnly && threshold > odds.bounds.surelyUndercut) return true;
  return chanceBelow(odds, threshold) > TOO_RICH_SHARE;
}

/** Where a grade stands against the machine's limits; what harms comes first. */
export function gradeName(
  { chanceOfLean, chanceOfRich, loss }: Grade,
  { limits }: Pick<Judge, 'limits'>,
): RunGrade {
  if (chanceOfLean > limits.risk) return 'lean';
  if (isDrowned(loss)) return 'drowned';
  return chanceOfRich > TOO_RICH_SHARE ? 'rich' : 'good';
}

/** So rich on average that it does not run. */
export function isDrowned(loss: number): boolean {
  return loss > MOST_LOSS_THAT_RUNS;
}

/**
 * A chance of lean as a count of `of` cases: rounded, but never on the other side of the limit than the chance itself.
 * A run over its limit always counts more than a run that keeps it.
 */
export function leanCountOf(chance: number, risk: number, of: number): LeanCount {
  const rounded = Math.round(chance * of);
  const within = Math.floor(risk * of);
  const lean = chance > risk ? Math.max(rounded, within + 1) : Math.min(rounded, within);
  return { lean: Math.min(lean, of), of };
}
