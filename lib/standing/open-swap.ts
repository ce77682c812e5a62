import type { Setting } from '@/lib/carb/machine';
import { sameMains, sameSetting } from '@/lib/carb/same-setting';
import { completeSetting, isOut } from '@/lib/plan/situation';
import type { Plan, PlanRequest } from '@/lib/plan/types';
import { addMinutes, type Instant } from '@/lib/time/instant';

/** A swap of the accepted plan whose time is over and of which nobody said that it was made. */
export type OpenSwap = {
  /** What counts as in until somebody says otherwise. */
  readonly from: Setting;
  /** What the accepted plan put in. */
  readonly to: Setting;
  /** The first run it was for, by sorted run. */
  readonly beforeRun: number;
  /** When it had to be begun at the latest. */
  readonly since: Instant;
  /** Runs that have begun since; by sorted run. */
  readonly runsSince: readonly number[];
};

type Asked = Pick<
  PlanRequest,
  'machine' | 'accepted' | 'fitted' | 'fittings' | 'made' | 'outFrom' | 'now' | 'options'
>;

/** When something was last said of the engine; what comes without a time is said now. */
function toldAt({ fitted, fittings, now }: Asked): number {
  const last = fittings?.at(-1);
  if (last !== undefined) return last.at;
  return fitted === null ? Number.NEGATIVE_INFINITY : now;
}

/**
 * The accepted swap that has to be asked about: the accepted plan had another setting in by now than the one that was
 * told, and nothing was said since the swap had to be begun. null where there is none; a swap for a run that the machine
 * does not make need not be made.
 */
export function openSwapOf(request: Asked, plan: Plan): OpenSwap | null {
  const { machine, accepted, now, options } = request;
  if (accepted === null) return null;
  const settings = plan.order.map((given) => accepted[given]);
  if (settings.length !== plan.sortedRuns.length || settings.includes(undefined)) return null;
  const wanted = settings.map((setting) => completeSetting(machine, setting!));
  const from = plan.inNow.setting;
  const minutesFor = (a: Setting, b: Setting) => (sameMains(a.mains, b.mains) ? 0 : options.swapMinutes);
  const begun = (run: number) =>
    !isOut(request, plan.sortedRuns[run]!.start) &&
    addMinutes(plan.sortedRuns[run]!.start, -minutesFor(wanted[run - 1] ?? from, wanted[run]!)) <= now;
  const last = wanted.findLastIndex((_, run) => begun(run));
  const to = wanted[last];
  if (to === undefined || sameSetting(to, from)) return null;
  const beforeRun = 1 + wanted.findLastIndex((setting, run) => run < last && !sameSetting(setting, to));
  const since = addMinutes(plan.sortedRuns[beforeRun]!.start, -minutesFor(wanted[beforeRun - 1] ?? from, to));
  const saidOtherwise = plan.runs.some(
    ({ run, state, setting }) => run >= beforeRun && state === 'made' && !sameSetting(setting, to),
  );
  if (toldAt(request) >= since || saidOtherwise) return null;
  const runsSince = plan.sortedRuns.flatMap(({ start }, run) =>
    run >= beforeRun && start <= now ? [run] : [],
  );
  return { from, to, beforeRun, since, runsSince };
}
