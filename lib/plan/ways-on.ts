import { groupCount, type RunChoice, swapTie, turnTie } from './choice';

/** The best there is from a run on, by the candidate in the engine when that run starts. */
type Layer = { readonly harm: Float64Array; readonly cost: Float64Array; readonly tie: Float64Array };

/** All values of one pass: the layer of run r starts at r * candidates. */
export type Pass = Layer & { readonly follow: Int32Array };

export function emptyPass(size: number): Pass {
  return {
    harm: new Float64Array(size),
    cost: new Float64Array(size),
    tie: new Float64Array(size),
    follow: new Int32Array(size),
  };
}

/** Writes the candidate of every group that is best to have in run `run`; the first where equal. */
function bestOfGroups(choice: RunChoice, pass: Pass, run: number, best: Int32Array): Int32Array {
  best.fill(-1);
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

/** Writes the best group to swap to from each group before run `run`; -1 where there is no other. */
function bestSwaps(
  choice: RunChoice,
  pass: Pass,
  at: { readonly run: number; readonly best: Int32Array; readonly target: Int32Array },
): Int32Array {
  const { run, best, target } = at;
  const groups = best.length;
  const base = run * choice.candidates;
  target.fill(-1);
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

type Passes = {
  /** Where keeping and turning lead. */
  readonly same: Pass;
  /** Where a swap leads; another pass where swaps are counted. null: none is left. */
  readonly swapped: Pass | null;
};

/** The ways on before run `run`, for whatever is in then: keep it, turn the trim, or swap. */
type Onward = Passes & {
  readonly choice: RunChoice;
  readonly run: number;
  /** The candidate of every group that a turn leads to, and that a swap from it leads to; null where neither fits. */
  readonly members: Int32Array | null;
  readonly targets: Int32Array | null;
};

/** Room for the lists of one `Onward`, written anew for each run. */
type Lists = { readonly members: Int32Array; readonly others: Int32Array; readonly targets: Int32Array };

export function roomForLists(choice: RunChoice): Lists {
  const list = () => new Int32Array(groupCount(choice));
  return { members: list(), others: list(), targets: list() };
}

export function onwardTo(choice: RunChoice, run: number, passes: Passes, room: Lists): Onward {
  const { same, swapped } = passes;
  const gap = choice.gaps[run]!;
  const members = gap === 'nothing' ? null : bestOfGroups(choice, same, run, room.members);
  const others =
    swapped === null || swapped === same ? members : bestOfGroups(choice, swapped, run, room.others);
  const targets =
    gap === 'swap' && swapped !== null && others !== null
      ? bestSwaps(choice, swapped, { run, best: others, target: room.targets })
      : null;
  return { choice, run, same, swapped, members, targets };
}

/**
 * Writes the best way on from a candidate into place `at` of a pass. The sums are whole numbers, so equal is equal. A turn
 * of the trim leads to the best member of the group; where that is the candidate itself, keeping it is no worse.
 *
 * Three offers, one after the other, and no object for any: this runs for every candidate of every run and count of swaps.
 */
export function takeBest(
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
