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

function emptyPass(size: number): Pass {
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
    let harm = Infinity;
    let cost = Infinity;
    let tie = Infinity;
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

/** The ways on before run `run`, for whatever is in then: keep it, turn the trim, or swap. */
type Onward = {
  readonly choice: RunChoice;
  readonly run: number;
  /** Where keeping and turning lead. */
  readonly same: Pass;
  /** Where a swap leads; another pass where swaps are counted. null: none is left. */
  readonly swapped: Pass | null;
  /** The candidate of every group that a turn leads to, and that a swap from it leads to; null where neither fits. */
  readonly members: Int32Array | null;
  readonly targets: Int32Array | null;
};

function onwardTo(choice: RunChoice, run: number, same: Pass, swapped: Pass | null): Onward {
  const gap = choice.gaps[run]!;
  const members = gap === 'nothing' ? null : bestOfGroups(choice, same, run);
  const others = swapped === null || swapped === same ? members : bestOfGroups(choice, swapped, run);
  const targets =
    gap === 'swap' && swapped !== null && others !== null
      ? bestSwaps(choice, swapped, { run, best: others })
      : null;
  return { choice, run, same, swapped, members, targets };
}

/**
 * Writes the best way on from a candidate into place `at` of a pass. The sums are whole numbers, so equal is equal. A turn
 * of the trim leads to the best member of the group; where that is the candidate itself, keeping it is no worse.
 *
 * Three offers, one after the other, and no object for any: this runs for every candidate of every run and count of swaps.
 */
function takeBest(
  { choice, run, same, swapped, members, targets }: Onward,
  from: number,
  into: Pass,
  at: number,
) {
  const base = run * choice.candidates;
  const runsLeft = choice.runs - run;
  const group = choice.group[from]!;
  let harm = same.harm[base + from]!;
  let cost = same.cost[base + from]!;
  let tie = same.tie[base + from]!;
  let candidate = from;
  const member = members === null ? from : members[group]!;
  if (member !== from) {
    const h = same.harm[base + member]!;
    const c = same.cost[base + member]! + choice.turnCost;
    const t = same.tie[base + member]! + turnTie(runsLeft);
    if (h !== harm ? h < harm : c !== cost ? c < cost : t < tie) {
      harm = h;
      cost = c;
      tie = t;
      candidate = member;
    }
  }
  const target = targets === null ? -1 : targets[group]!;
  if (swapped !== null && target !== -1) {
    const step = choice.steps[group * groupCount(choice) + choice.group[target]!]!;
    const h = swapped.harm[base + target]!;
    const c = swapped.cost[base + target]! + choice.swapCost;
    const t = swapped.tie[base + target]! + swapTie(runsLeft, step);
    if (h !== harm ? h < harm : c !== cost ? c < cost : t < tie) {
      harm = h;
      cost = c;
      tie = t;
      candidate = target;
    }
  }
  into.harm[at] = harm;
  into.cost[at] = cost;
  into.tie[at] = tie;
  into.follow[at] = candidate;
}

/** Fills a pass from the last run back. */
function fill(choice: RunChoice, pass: Pass, swapped: Pass | null): void {
  const { runs, candidates } = choice;
  for (let run = runs - 1; run >= 0; run--) {
    const on = run === runs - 1 ? null : onwardTo(choice, run + 1, pass, swapped);
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
  takeBest(onwardTo(choice, 0, same, swapped), choice.start, way, 0);
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
