import type { Setting } from '@/lib/carb/machine';
import { sameMains, sameSetting } from '@/lib/carb/same-setting';
import type { Candidate } from './candidates';
import { isTooRich, type Judge, leanThreshold } from './grade';
import { isSurelyRare, type RunOdds } from './run-odds';

type Night = {
  readonly odds: readonly RunOdds[];
  readonly judge: Judge;
  /** Of each run, what must be left to the lean limit (as a log of area). */
  readonly rooms: readonly number[];
  /** Settings that stay in any case: what is fitted, what was accepted. */
  readonly keep: readonly Setting[];
};

/** Surely within the lean limit in every run, with the room it asks for. */
function isSafe(candidate: Candidate, { odds, judge, rooms }: Night): boolean {
  const threshold = leanThreshold(candidate, judge);
  return odds.every((run, i) =>
    isSurelyRare(run, { threshold: threshold - rooms[i]!, side: 1, tail: judge.leanTail }),
  );
}

/** Rich nowhere in any draw of any run: nothing leaner can lose less. */
function losesNothing(candidate: Candidate, { odds, judge }: Night): boolean {
  return odds.every(
    (run) => candidate.richest <= run.bounds.lowestIdeal && !isTooRich(run, candidate, judge),
  );
}

/** Of things that come leanest first: from the last that loses nothing to the first that is safe, and what is kept. */
function between<T>(
  rising: readonly T[],
  given: {
    readonly safe: (each: T) => boolean;
    readonly free: (each: T) => boolean;
    readonly kept: (each: T) => boolean;
  },
): readonly T[] {
  const firstSafe = rising.findIndex(given.safe);
  const lastFree = rising.findLastIndex(given.free);
  return rising.filter(
    (each, i) => given.kept(each) || ((firstSafe === -1 || i <= firstSafe) && i >= lastFree),
  );
}

/** Sets of jets as they come, each with its trim positions, leanest first. */
function groupsOf(all: readonly Candidate[]): readonly (readonly Candidate[])[] {
  const groups: Candidate[][] = [];
  for (const candidate of all) {
    groups[candidate.group] ??= [];
    groups[candidate.group]!.push(candidate);
  }
  return groups;
}

/**
 * What is in and could not be put together from the box comes last, wherever it stands: where it is leaner than what
 * comes before it, it says nothing about the others.
 */
function offTheLadder(rising: readonly (readonly Candidate[])[]): readonly Candidate[] | null {
  const [before, last] = rising.slice(-2);
  return last !== undefined && before !== undefined && last[0]!.leanest < before[0]!.leanest ? last : null;
}

/**
 * The candidates a night needs. Jet sets come leanest first and each is richer than the one before in every
 * carburettor, and so do the trim positions of a set. So a set that is richer than one that is safe at every trim only
 * loses power, and a set leaner than one that loses nothing at any trim only takes risk; the same holds for positions
 * within a set. Leaving them out changes no best plan, and keeps a box of a hundred sizes quick.
 */
export function usefulCandidates(all: readonly Candidate[], night: Night): readonly Candidate[] {
  const rising = groupsOf(all);
  const off = offTheLadder(rising);
  const sets = between(rising, {
    safe: (set) => isSafe(set[0]!, night),
    free: (set) => set !== off && losesNothing(set.at(-1)!, night),
    kept: (set) => night.keep.some(({ mains }) => sameMains(mains, set[0]!.setting.mains)),
  });
  return sets.flatMap((set, group) =>
    between(set, {
      safe: (candidate) => isSafe(candidate, night),
      free: (candidate) => losesNothing(candidate, night),
      kept: ({ setting }) => night.keep.some((each) => sameSetting(each, setting)),
    }).map((candidate) => ({ ...candidate, group })),
  );
}
