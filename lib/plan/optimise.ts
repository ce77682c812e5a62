import {
  type Cost,
  changeBetween,
  compareCosts,
  groupCount,
  harmOf,
  type RunChoice,
  swapTie,
  turnTie,
} from './choice';

/** The best there is from a run on, by the candidate in the engine when that run starts. */
type Layer = { readonly harm: Float64Array; readonly cost: Float64Array; readonly tie: Float64Array };

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

/** All values of one pass: the layer of run r starts at r * candidates. */
type Pass = Layer & { readonly follow: Int32Array };

function emptyPass(choice: RunChoice): Pass {
  const size = (choice.runs + 1) * choice.candidates;
  return {
    harm: new Float64Array(size),
    cost: new Float64Array(size),
    tie: new Float64Array(size),
    follow: new Int32Array(size),
  };
}

/** The candidate of every group that is best to have in run `run`; the first where equal. */
function bestOfGroups(choice: RunChoice, pass: Pass, run: number): Int32Array {
  const best = new Int32Array(groupCount(choice)).fill(-1);
  const base = run * choice.candidates;
  for (let c = 0; c < choice.candidates; c++) {
    const group = choice.group[c]!;
    const other = best[group]!;
    if (other === -1 || isBefore(pass, base + c, base + other)) best[group] = c;
  }
  return best;
}

function isBefore(pass: Pass, a: number, b: number): boolean {
  if (pass.harm[a] !== pass.harm[b]) return pass.harm[a]! < pass.harm[b]!;
  if (pass.cost[a] !== pass.cost[b]) return pass.cost[a]! < pass.cost[b]!;
  return pass.tie[a]! < pass.tie[b]!;
}

/** The best group to swap to from each group before run `run`; -1 where there is no other. */
function bestSwaps(
  choice: RunChoice,
  pass: Pass,
  at: { readonly run: number; readonly best: Int32Array },
): Int32Array {
  const { run, best } = at;
  const groups = best.length;
  const base = run * choice.candidates;
  const target = new Int32Array(groups).fill(-1);
  for (let from = 0; from < groups; from++) {
    let [harm, cost, tie] = [Infinity, Infinity, Infinity];
    for (let to = 0; to < groups; to++) {
      if (to === from) continue;
      const i = base + best[to]!;
      if (pass.harm[i]! > harm) continue;
      const level = pass.harm[i]! === harm;
      if (level && pass.cost[i]! > cost) continue;
      const withStep = pass.tie[i]! + choice.steps[from * groups + to]!;
      if (level && pass.cost[i]! === cost && withStep >= tie) continue;
      harm = pass.harm[i]!;
      cost = pass.cost[i]!;
      tie = withStep;
      target[from] = best[to]!;
    }
  }
  return target;
}

type Way = { readonly harm: number; readonly cost: number; readonly tie: number; readonly candidate: number };

/** What a way on adds to where it leads. */
type Extra = { readonly cost: number; readonly tie: number };

const KEPT: Extra = { cost: 0, tie: 0 };

/** The ways on from every candidate before run `run`: keep it, turn the trim, or swap. */
type Onward = {
  readonly choice: RunChoice;
  readonly run: number;
  /** Where keeping and turning lead. */
  readonly same: Pass;
  /** Where a swap leads; another pass where swaps are counted. null: none is left. */
  readonly swapped: Pass | null;
};

/**
 * Best way into run `run` for each candidate fitted before it. The sums are whole numbers, so equal is equal. A turn of
 * the trim leads to the best member of the group; where that is the candidate itself, keeping it is no worse.
 */
function waysOn({ choice, run, same, swapped }: Onward): (from: number) => Way {
  const base = run * choice.candidates;
  const gap = choice.gaps[run]!;
  const groups = groupCount(choice);
  const turned: Extra = { cost: choice.turnCost, tie: turnTie(choice.runs - run) };
  const members = gap === 'nothing' ? null : bestOfGroups(choice, same, run);
  const others = swapped === null || swapped === same ? members : bestOfGroups(choice, swapped, run);
  const targets =
    gap === 'swap' && swapped !== null && others !== null
      ? bestSwaps(choice, swapped, { run, best: others })
      : null;
  let [harm, cost, tie, candidate] = [0, 0, 0, -1];
  const offer = (pass: Pass, to: number, extra: Extra) => {
    const [h, c, t] = [
      pass.harm[base + to]!,
      pass.cost[base + to]! + extra.cost,
      pass.tie[base + to]! + extra.tie,
    ];
    const better = h !== harm ? h < harm : c !== cost ? c < cost : t < tie;
    if (candidate !== -1 && !better) return;
    harm = h;
    cost = c;
    tie = t;
    candidate = to;
  };
  return (from) => {
    candidate = -1;
    const group = choice.group[from]!;
    offer(same, from, KEPT);
    if (members !== null && members[group] !== from) offer(same, members[group]!, turned);
    const to = targets === null ? -1 : targets[group]!;
    if (swapped !== null && to !== -1) {
      const step = choice.steps[group * groups + choice.group[to]!]!;
      offer(swapped, to, { cost: choice.swapCost, tie: swapTie(choice.runs - run, step) });
    }
    return { harm, cost, tie, candidate };
  };
}

/** Fills a pass from the last run back. */
function fill(choice: RunChoice, pass: Pass, swapped: Pass | null): void {
  const { runs, candidates } = choice;
  for (let run = runs - 1; run >= 0; run--) {
    const on = run === runs - 1 ? null : waysOn({ choice, run: run + 1, same: pass, swapped });
    for (let c = 0; c < candidates; c++) {
      const i = run * candidates + c;
      const best = on?.(c);
      pass.harm[i] = harmOf(choice, i) + (best?.harm ?? 0);
      pass.cost[i] = choice.loss[i]! + (best?.cost ?? 0);
      pass.tie[i] = best?.tie ?? 0;
      pass.follow[i] = best?.candidate ?? -1;
    }
  }
}

/** The best way into the first run from what is fitted. */
function firstWay(choice: RunChoice, same: Pass, swapped: Pass | null): Way {
  return waysOn({ choice, run: 0, same, swapped })(choice.start);
}

function costAt(pass: Pass, index: number): Cost {
  return { harm: pass.harm[index]!, cost: pass.cost[index]!, tie: pass.tie[index]! };
}

/** Dynamic programming, exact: the best plan from every run and candidate on, any number of swaps. */
export function optimise(choice: RunChoice): Solution {
  const pass = emptyPass(choice);
  fill(choice, pass, pass);
  const toGo = (run: number, candidate: number) => costAt(pass, run * choice.candidates + candidate);
  const next = (run: number, candidate: number) => pass.follow[run * choice.candidates + candidate]!;
  if (choice.runs === 0) return { toGo, next, plan: [], cost: { harm: 0, cost: 0, tie: 0 } };
  const first = firstWay(choice, pass, pass);
  const plan = [first.candidate];
  while (plan.length < choice.runs) plan.push(next(plan.length - 1, plan.at(-1)!));
  return { toGo, next, plan, cost: { harm: first.harm, cost: first.cost, tie: first.tie } };
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
    const pass = emptyPass(choice);
    fill(choice, pass, passes[left - 1] ?? null);
    passes.push(pass);
    const first = firstWay(choice, pass, passes[left - 1] ?? null);
    const before = found.at(-1)?.cost;
    if (before !== undefined && before.harm === first.harm && before.cost === first.cost) continue;
    const plan = readPlan(choice, passes);
    const cost = { harm: first.harm, cost: first.cost, tie: first.tie };
    found.push({ plan, cost, swaps: countSwaps(choice, plan) });
  }
  return found;
}

type Act = { readonly run: number; readonly candidate: number; readonly cost: Cost };

/** The best plan whose first act is another one than in `plan`; null where there is no other. */
export function bestOtherFirstAct(choice: RunChoice, solution: Solution): CountedPlan | null {
  const { start, candidates } = choice;
  const acts = solution.plan.findIndex((candidate) => candidate !== start);
  const offers: Act[] = [];
  let [harm, cost] = [0, 0];
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
      offers.push({ run, candidate, cost: whole });
    }
    harm += harmOf(choice, run * candidates + start);
    cost += choice.loss[run * candidates + start]!;
  }
  if (acts !== -1) offers.push({ run: choice.runs, candidate: start, cost: { harm, cost, tie: 0 } });
  const first = offers[0];
  if (first === undefined) return null;
  return followed(
    choice,
    solution,
    offers.reduce((best, act) => (compareCosts(act.cost, best.cost) < 0 ? act : best), first),
  );
}

function followed(choice: RunChoice, solution: Solution, act: Act): CountedPlan {
  const plan: number[] = [];
  for (let run = 0; run < choice.runs; run++) {
    if (run < act.run) plan.push(choice.start);
    else plan.push(run === act.run ? act.candidate : solution.next(run - 1, plan.at(-1)!));
  }
  return { plan, cost: act.cost, swaps: countSwaps(choice, plan) };
}
