import { type Cost, changeBetween, compareCosts, harmOf, type RunChoice } from './choice';
import { emptyPass, onwardTo, type Pass, roomForLists, takeBest } from './ways-on';

/**
 * Best costs to go. `toGo(r)` holds, for every candidate in run r, the best cost of runs r.. with it; `next(r, c)`
 * the candidate that follows in run r + 1.
 */
export type Solution = {
  readonly toGo: (run: number, candidate: number) => Cost;
  readonly next: (run: number, candidate: number) => number;
  /** The best plan from what is fitted. */
  readonly plan: readonly number[];
  readonly cost: Cost;
};

/** Fills a pass from the last run back. */
function fill(choice: RunChoice, pass: Pass, swapped: Pass | null): void {
  const { runs, candidates } = choice;
  const passes = { same: pass, swapped };
  const room = roomForLists(choice);
  for (let run = runs - 1; run >= 0; run--) {
    const on = run === runs - 1 ? null : onwardTo(choice, run + 1, passes, room);
    for (let c = 0; c < candidates; c++) {
      const i = run * candidates + c;
      if (on === null) pass.follow[i] = -1;
      else takeBest(on, c, pass, i);
      pass.harm[i]! += harmOf(choice, i);
      pass.cost[i]! += choice.loss[i]!;
    }
  }
}

type Way = { readonly cost: Cost; readonly candidate: number };

/** The best way into the first run from what is fitted. */
function firstWay(choice: RunChoice, same: Pass, swapped: Pass | null): Way {
  const way = emptyPass(1);
  takeBest(onwardTo(choice, 0, { same, swapped }, roomForLists(choice)), choice.start, way, 0);
  return { cost: costAt(way, 0), candidate: way.follow[0]! };
}

function costAt(pass: Pass, index: number): Cost {
  return { harm: pass.harm[index]!, cost: pass.cost[index]!, tie: pass.tie[index]! };
}

/** Dynamic programming, exact: the best plan from every run and candidate on, any number of swaps. */
export function optimise(choice: RunChoice): Solution {
  const pass = emptyPass(choice.runs * choice.candidates);
  fill(choice, pass, pass);
  const toGo = (run: number, candidate: number) => costAt(pass, run * choice.candidates + candidate);
  const next = (run: number, candidate: number) => pass.follow[run * choice.candidates + candidate]!;
  if (choice.runs === 0) return { toGo, next, plan: [], cost: { harm: 0, cost: 0, tie: 0 } };
  const first = firstWay(choice, pass, pass);
  const plan = [first.candidate];
  while (plan.length < choice.runs) plan.push(next(plan.length - 1, plan.at(-1)!));
  return { toGo, next, plan, cost: first.cost };
}

export type CountedPlan = { readonly plan: readonly number[]; readonly cost: Cost; readonly swaps: number };

/** How many swaps a plan makes. */
export function countSwaps(choice: RunChoice, plan: readonly number[]): number {
  let before = choice.start;
  let swaps = 0;
  for (const candidate of plan) {
    if (choice.group[candidate] !== choice.group[before]) swaps += 1;
    before = candidate;
  }
  return swaps;
}

/** Reads a plan out of passes with 0, 1, 2 ... swaps left. */
function readPlan(choice: RunChoice, passes: readonly Pass[]): readonly number[] {
  let left = passes.length - 1;
  let before = choice.start;
  const plan: number[] = [];
  for (let run = 0; run < choice.runs; run++) {
    const pass = passes[left]!;
    const candidate =
      run === 0
        ? firstWay(choice, pass, passes[left - 1] ?? null).candidate
        : pass.follow[(run - 1) * choice.candidates + before]!;
    if (choice.group[candidate] !== choice.group[before]) left -= 1;
    plan.push(candidate);
    before = candidate;
  }
  return plan;
}

/**
 * The best plan for every number of swaps up to a most, fewest first: each entry is the best that its swaps can buy,
 * and more swaps are listed only where they buy something. A swap costs nothing here but the loss is what it saves.
 */
export function bestBySwaps(given: RunChoice, mostSwaps: number): readonly CountedPlan[] {
  const choice: RunChoice = { ...given, swapCost: 0 };
  const unlimited = optimise(choice);
  const most = Math.min(mostSwaps, countSwaps(choice, unlimited.plan));
  const found: CountedPlan[] = [];
  const passes: Pass[] = [];
  for (let left = 0; left <= most; left++) {
    const pass = emptyPass(choice.runs * choice.candidates);
    fill(choice, pass, passes[left - 1] ?? null);
    passes.push(pass);
    const before = found.at(-1)?.cost;
    const { cost } = firstWay(choice, pass, passes[left - 1] ?? null);
    if (before !== undefined && before.harm === cost.harm && before.cost === cost.cost) continue;
    const plan = readPlan(choice, passes);
    found.push({ plan, cost, swaps: countSwaps(choice, plan) });
  }
  return found;
}

type Act = { readonly run: number; readonly candidate: number; readonly cost: Cost };

/** The best plan whose first act is another one than in `plan`; null where there is no other. */
export function bestOtherFirstAct(choice: RunChoice, solution: Solution): CountedPlan | null {
  const { start, candidates } = choice;
  const acts = solution.plan.findIndex((candidate) => candidate !== start);
  let best: Act | null = null;
  let harm = 0;
  let cost = 0;
  for (let run = 0; run < choice.runs; run++) {
    for (let candidate = 0; candidate < candidates; candidate++) {
      const known = run === acts && candidate === solution.plan[run];
      const change =
        known || candidate === start ? null : changeBetween(choice, { run, from: start, to: candidate });
      if (change === null) continue;
      const rest = solution.toGo(run, candidate);
      const whole = {
        harm: harm + rest.harm,
        cost: cost + rest.cost + change.cost,
        tie: rest.tie + change.tie,
      };
      if (best === null || compareCosts(whole, best.cost) < 0) best = { run, candidate, cost: whole };
    }
    harm += harmOf(choice, run * candidates + start);
    cost += choice.loss[run * candidates + start]!;
  }
  const none = { harm, cost, tie: 0 };
  if (acts !== -1 && (best === null || compareCosts(none, best.cost) < 0))
    best = { run: choice.runs, candidate: start, cost: none };
  return best === null ? null : followed(choice, solution, best);
}

function followed(choice: RunChoice, solution: Solution, act: Act): CountedPlan {
  const plan: number[] = [];
  for (let run = 0; run < choice.runs; run++) {
    if (run < act.run) plan.push(choice.start);
    else plan.push(run === act.run ? act.candidate : solution.next(run - 1, plan.at(-1)!));
  }
  return { plan, cost: act.cost, swaps: countSwaps(choice, plan) };
}
