import { sameSetting } from '@/lib/carb/same-setting';
import type { ComparedPlan, PlanChange, PlanDifference, SwapAct } from './compared';

/** Mean ambient temperature at the run that starts at an instant, colder now than before [K]; 0 where unknown. */
function colderAt(before: ComparedPlan, after: ComparedPlan, start: number): number {
  const temperatureIn = (plan: ComparedPlan) =>
    plan.runs.find(({ run }) => plan.sortedRuns[run]?.start === start)?.air.temperature;
  const [old, fresh] = [temperatureIn(before), temperatureIn(after)];
  return old === undefined || fresh === undefined ? 0 : old - fresh;
}

/** Told apart by when the run starts, so that plans over different lists of runs can be compared. */
function startOf(plan: ComparedPlan, swap: SwapAct): number {
  return plan.sortedRuns[swap.beforeRun]!.start;
}

/** The first run that is still to come. */
function firstOpen(plan: ComparedPlan): ComparedPlan['runs'][number] | undefined {
  return plan.runs.find(({ state }) => state === 'planned');
}

/** Old swaps that are still ahead: not past, and not made already. */
function openSwaps(before: ComparedPlan, after: ComparedPlan): readonly SwapAct[] {
  const first = firstOpen(after);
  if (first === undefined) return [];
  const from = after.sortedRuns[first.run]!.start;
  return before.swaps.filter((swap) => {
    const start = startOf(before, swap);
    const now = after.runs.find(({ run }) => after.sortedRuns[run]!.start === start);
    const toCome = after.swaps.some(
      (each) =>
        startOf(after, each) === start || (startOf(after, each) < start && sameSetting(each.to, swap.to)),
    );
    const madeEarly = now !== undefined && sameSetting(now.setting, swap.to) && !toCome;
    return start >= from && !madeEarly;
  });
}

/** Another start to the night: both plans open with its first run, on other jets. */
function startChange(before: ComparedPlan, after: ComparedPlan): PlanChange | null {
  const [old, fresh] = [firstOpen(before), firstOpen(after)];
  if (old?.run !== 0 || fresh?.run !== 0) return null;
  if (before.sortedRuns[0]!.start !== after.sortedRuns[0]!.start) return null;
  return sameSetting(old.setting, fresh.setting)
    ? null
    : { code: 'start-changed', from: old.setting, to: fresh.setting };
}

/** Pairs each old swap with the new one it became: the same run first, then the same jets. */
function pairs(
  before: ComparedPlan,
  after: ComparedPlan,
  swaps: Ahead,
): readonly { readonly from: SwapAct; readonly to: SwapAct }[] {
  const taken = new Set<SwapAct>();
  const found: { readonly from: SwapAct; readonly to: SwapAct }[] = [];
  const pairUp = (fits: (from: SwapAct, to: SwapAct) => boolean) => {
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
  before: ComparedPlan,
  after: ComparedPlan,
  { from, to }: { readonly from: SwapAct; readonly to: SwapAct },
): readonly PlanChange[] {
  const colder = colderAt(before, after, startOf(after, to));
  if (startOf(before, from) !== startOf(after, to)) return [{ code: 'swap-moved', from, to, colder }];
  return sameSetting(from.to, to.to) ? [] : [{ code: 'swap-target-changed', from, to, colder }];
}

type Ahead = { readonly before: readonly SwapAct[]; readonly after: readonly SwapAct[] };

/** The swaps of both plans that are compared as swaps; a changed start speaks for those before the first run. */
function swapsAhead(before: ComparedPlan, after: ComparedPlan, start: PlanChange | null): Ahead {
  const counts = ({ beforeRun }: SwapAct) => start === null || beforeRun > 0;
  return { before: openSwaps(before, after).filter(counts), after: after.swaps.filter(counts) };
}

/** What the next thing to do is: the run it is for and what goes in. */
function actOf(plan: ComparedPlan, swap: SwapAct | undefined): string {
  return swap === undefined ? 'none' : JSON.stringify([startOf(plan, swap), swap.to.mains, swap.to.trim]);
}

/** What changed from one plan to the next, act by act. */
export function comparePlans(before: ComparedPlan, after: ComparedPlan): PlanDifference {
  const start = startChange(before, after);
  const swaps = swapsAhead(before, after, start);
  const paired = pairs(before, after, swaps);
  const old = new Set(paired.map(({ from }) => from));
  const fresh = new Set(paired.map(({ to }) => to));
  const colder = (plan: ComparedPlan, swap: SwapAct) => colderAt(before, after, startOf(plan, swap));
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
