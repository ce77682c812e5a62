import { airAt } from '@/lib/air/air-from';
import type { Setting } from '@/lib/carb/machine';
import { sameSetting } from '@/lib/carb/same-setting';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { acceptedPlan, comparedAccepted, freeFrom } from '@/lib/plan/accepted-plan';
import type { ComparedPlan, PlanDifference } from '@/lib/plan/compared';
import { comparePlans } from '@/lib/plan/difference';
import type { Plan } from '@/lib/plan/types';
import type { EventRecord } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { celsiusToKelvin } from '@/lib/units/convert';
import type { Night } from './night';

/**
 * The plan a person accepted, to compare the plan of now with: its settings, and the temperatures its runs were
 * accepted with where those were kept. null where none was accepted, or not for these runs.
 */
export function acceptedOfNight({ request, fitted, records }: Night, plan: Plan): ComparedPlan | null {
  const air = records.event.value.acceptedAir?.[records.machine.id] ?? [];
  return acceptedAs({ accepted: request.accepted, fitted, air }, plan);
}

type Told = {
  readonly accepted: Night['request']['accepted'];
  readonly fitted: Setting;
  readonly air: NonNullable<EventRecord['acceptedAir']>[string];
};

export function acceptedAs({ accepted, fitted, air }: Told, plan: Plan): ComparedPlan | null {
  if (accepted === null) return null;
  const settings = plan.order.flatMap((given) => accepted[given] ?? []);
  if (settings.length !== plan.sortedRuns.length) return null;
  const airs = plan.runs.map((run) => {
    const start = plan.sortedRuns[run.run]?.start;
    const then = air.find((each) => instantFromJson(each.start) === start);
    if (then === undefined) return run;
    return { ...run, air: airAt({ ...run.air, temperature: celsiusToKelvin(then.temperatureC) }) };
  });
  return comparedAccepted(acceptedPlan(plan.sortedRuns, settings, fitted), { runs: airs });
}

/**
 * What changed since a plan was accepted. Where other jets are in than it takes for the next run, putting them in for
 * that run is part of it, though its settings by run do not tell.
 */
export function changedSince(accepted: ComparedPlan, plan: Plan): PlanDifference {
  const next = plan.runs.find(({ state }) => state === 'planned')?.run;
  const to = accepted.runs.find(({ run }) => run === next)?.setting;
  const from = plan.inNow.setting;
  const told = accepted.swaps.some(({ beforeRun }) => beforeRun === next);
  if (next === undefined || to === undefined || told || sameSetting(from, to))
    return comparePlans(accepted, plan);
  const windowStart = missedFrom(accepted, plan, { to, next }) ?? freeFrom(plan.sortedRuns, next);
  const back = { beforeRun: next, from, to, windowStart };
  const swaps = [...accepted.swaps, back].sort((a, b) => a.beforeRun - b.beforeRun);
  return comparePlans({ ...accepted, swaps }, plan);
}

/**
 * When the swap that was to put these jets in could begin, where no run since was made on them: it is still the swap of
 * that time. null where the plan has none, or they were in and came out again.
 */
function missedFrom(
  { swaps }: ComparedPlan,
  { runs }: Plan,
  { to, next }: { readonly to: Setting; readonly next: number },
): Instant | null {
  const last = swaps.findLast(({ beforeRun }) => beforeRun < next);
  if (last === undefined) return null;
  const wasIn = runs.some(
    ({ run, setting }) => run >= last.beforeRun && run < next && sameSetting(setting, to),
  );
  return wasIn ? null : last.windowStart;
}
