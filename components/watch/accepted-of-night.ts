import type { Night } from '@/components/night/night';
import { airAt } from '@/lib/air/air-from';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { ComparedPlan, Plan } from '@/lib/plan/types';
import { acceptedPlan, comparedAccepted } from '@/lib/share/accepted-plan';
import { celsiusToKelvin } from '@/lib/units/convert';

/**
 * The plan a person accepted, to compare the plan of now with: its settings, and the temperatures its runs were
 * accepted with where those were kept. null where none was accepted, or not for these runs.
 */
export function acceptedOfNight({ request, fitted, records }: Night, plan: Plan): ComparedPlan | null {
  const { accepted } = request;
  if (accepted === null) return null;
  const settings = plan.order.flatMap((given) => accepted[given] ?? []);
  if (settings.length !== plan.sortedRuns.length) return null;
  const known = records.event.value.acceptedAir?.[records.machine.id] ?? [];
  const airs = plan.runs.map((run) => {
    const start = plan.sortedRuns[run.run]?.start;
    const then = known.find((each) => instantFromJson(each.start) === start);
    if (then === undefined) return run;
    return { ...run, air: airAt({ ...run.air, temperature: celsiusToKelvin(then.temperatureC) }) };
  });
  return comparedAccepted(acceptedPlan(plan.sortedRuns, settings, fitted), { runs: airs });
}
