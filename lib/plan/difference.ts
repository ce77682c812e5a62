import { sameSetting } from './candidates';
import type { Plan, PlanChange, PlanDifference, RunPlan, Swap } from './types';

/** Mean ambient temperature at the run that starts at an instant, colder now than before [K]; 0 where unknown. */
function colderAt(before: Plan, after: Plan, start: number): number {
  const temperatureIn = (plan: Plan) =>
    plan.runs.find(({ run }) => plan.sortedRuns[run]?.start === start)?.air.temperature;
  const [old, fresh] = [temperatureIn(before), temperatureIn(after)];
  return old === undefined || fresh === undefined ? 0 : old - fresh;
}

/** Told apart by when the run starts, so that plans over different lists of runs can be compared. */
function startOf(plan: Plan, swap: Swap): number {
  return plan.sortedRuns[swap.beforeRun]!.start;
}

/** The first run that is still to come. */
function firstOpen(plan: Plan): RunPlan | undefined {
  return plan.runs.find(({ state }) => state === 'planned');
}

/** Old swaps that are still ahead: not past, and not made already. */
function openSwaps(before: Plan, after: Plan): readonly Swap[] {
  const first = firstOpen(after);
  if (first === undefined) return [];
  const from = after.sortedRuns[first.run]!.start;
  return before.swaps.filter((swap) => {
    const start = startOf(before, swap);
    const now = after.runs.find(({ run }) => after.sortedRuns[run]!.start === start);
    const again = after.swaps.some((each) => startOf(after, each) === start);
    const madeEarly = now !== undefined && sameSetting(now.setting, swap.to) && !again;
    return start >= from && !madeEarly;
  });
}

/** Another start to the night: both plans open with its first run, on other jets. */
function startChange(before: Plan, after: Plan): PlanChange | null {
  const [old, fresh] = [firstOpen(before), firstOpen(after)];
  if (old?.run !== 0 || fresh?.run !== 0) return null;
  if (before.sortedRuns[0]!.start !== after.sortedRuns[0]!.start) return null;
  return sameSetting(old.setting, fresh.setting)
    ? null
    : { code: 'start-changed', from: old.setting, to: fresh.setting };
}

/** Pairs each old swap with the new one it became: the same run first, then the same jets. */
function pairs(
  before: Plan,
  after: Plan,
  swaps: Ahead,
): readonly { readonly from: Swap; readonly to: Swap }[] {
  const taken = new Set<Swap>();
  const found: { readonly from: Swap; readonly to: Swap }[] = [];
  const pairUp = (fits: (from: Swap, to: Swap) => boolean) => {
    for (const from of swaps.before) {
      if (taken.has(from)) continue;
      const to = swaps.after.find((swap) => !taken.has(swap) && fits(from, swap));
      if (to === undefined) continue;
      taken.add(from).add(to);
      found.push({ from, to });
    }
  };
  pairUp((from, to) => startOf(before, from) === startOf(after, to));
  pairUp((from, to) => sameSetting(from.to, to.to));
  return found;
}

function changeOf(
  before: Plan,
  after: Plan,
  { from, to }: { readonly from: Swap; readonly to: Swap },
): readonly PlanChange[] {
  const colder = colderAt(before, after, startOf(after, to));
  if (startOf(before, from) !== startOf(after, to)) return [{ code: 'swap-moved', from, to, colder }];
  return sameSetting(from.to, to.to) ? [] : [{ code: 'swap-target-changed', from, to, colder }];
}

type Ahead = { readonly before: readonly Swap[]; readonly after: readonly Swap[] };

/** The swaps of both plans that are compared as swaps; a changed start speaks for those before the first run. */
function swapsAhead(before: Plan, after: Plan, start: PlanChange | null): Ahead {
  const counts = ({ beforeRun }: Swap) => start === null || beforeRun > 0;
  return { before: openSwaps(before, after).filter(counts), after: after.swaps.filter(counts) };
}

/** What the next thing to do is: the run it is for and what goes in. */
function actOf(plan: Plan, swap: Swap | undefined): string {
  return swap === undefined ? 'none' : JSON.stringify([startOf(plan, swap), swap.to.mains, swap.to.trim]);
}

/** What changed from one plan to the next, act by act. */
export function comparePlans(before: Plan, after: Plan): PlanDifference {
  const start = startChange(before, after);
  const swaps = swapsAhead(before, after, start);
  const paired = pairs(before, after, swaps);
  const old = new Set(paired.map(({ from }) => from));
  const fresh = new Set(paired.map(({ to }) => to));
  const colder = (plan: Plan, swap: Swap) => colderAt(before, after, startOf(plan, swap));
  const changes: readonly PlanChange[] = [
    ...(start === null ? [] : [start]),
    ...paired.flatMap((pair) => changeOf(before, after, pair)),
    ...swaps.before
      .filter((swap) => !old.has(swap))
      .map((swap): PlanChange => ({ code: 'swap-dropped', swap, colder: colder(before, swap) })),
    ...swaps.after
      .filter((swap) => !fresh.has(swap))
      .map((swap): PlanChange => ({ code: 'swap-added', swap, colder: colder(after, swap) })),
  ];
  const nextBefore = actOf(before, openSwaps(before, after)[0]);
  return { changes, nextActChanged: nextBefore !== actOf(after, after.swaps[0]) };
}
