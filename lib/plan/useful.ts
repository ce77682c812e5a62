import type { Setting } from '@/lib/carb/machine';
import { type Candidate, sameMains } from './candidates';
import { isTooRich, type Judge, leanThreshold } from './grade';
import { isSurelyRare, type RunOdds } from './run-odds';

type Night = {
  readonly odds: readonly RunOdds[];
  readonly judge: Judge;
  /** Settings that stay in any case: what is fitted, what was accepted. */
  readonly keep: readonly Setting[];
};

/** Surely within the lean limit in every run, its leanest trim included. */
function isSafe(group: readonly Candidate[], { odds, judge }: Night): boolean {
  const leanest = group.reduce((a, b) => (b.leanest < a.leanest ? b : a));
  const threshold = leanThreshold(leanest, judge);
  return odds.every((run) => isSurelyRare(run, { threshold, side: 1, tail: judge.leanTail }));
}

/** Rich nowhere in any draw of any run, its richest trim included: nothing leaner can lose less. */
function losesNothing(group: readonly Candidate[], { odds, judge }: Night): boolean {
  const richest = group.reduce((a, b) => (b.richest > a.richest ? b : a));
  return odds.every((run) => richest.richest <= run.bounds.lowestIdeal && !isTooRich(run, richest, judge));
}

/**
 * The candidates a night needs. Jet sets come leanest first and each is richer than the one before in every
 * carburettor, so a set richer than one that is safe all night only loses power, and a set leaner than one that loses
 * nothing only takes risk. Leaving them out changes no best plan, and keeps a box of a hundred sizes quick.
 */
export function usefulCandidates(all: readonly Candidate[], night: Night): readonly Candidate[] {
  const groups: Candidate[][] = [];
  for (const candidate of all) {
    groups[candidate.group] ??= [];
    groups[candidate.group]!.push(candidate);
  }
  const isKept = (group: readonly Candidate[]) =>
    night.keep.some(({ mains }) => sameMains(mains, group[0]!.setting.mains));
  const firstSafe = groups.findIndex((group) => isSafe(group, night));
  const lastFree = groups.findLastIndex((group) => losesNothing(group, night));
  return groups
    .filter((group, i) => isKept(group) || ((firstSafe === -1 || i <= firstSafe) && i >= lastFree))
    .flatMap((group, i) => group.map((candidate) => ({ ...candidate, group: i })));
}
