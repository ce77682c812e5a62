import type { LoggedRun, NightToReview, PlannedRun } from '@/lib/after/review';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { settingOf, settingProblems } from '@/lib/contract/setting-problems';
import type { Instant } from '@/lib/time/instant';
import { celsiusToKelvin } from '@/lib/units/convert';
import type { Night } from './night';

/** What the store knows of a night that is over, in the core's own terms. */
export function nightToReview({ records, machine, request }: Night, now: Instant): NightToReview {
  return {
    request: { ...request, now },
    planned: plannedRuns({ records, machine, request }),
    log: records.log.map(
      ({ at, run, verdict, sizes }): LoggedRun => ({ at: instantFromJson(at), run, verdict, sizes }),
    ),
  };
}

type Given = Pick<Night, 'records' | 'machine' | 'request'>;

/** By the event's runs; nights from before plans were kept know the accepted one, which followed what was told. */
function plannedRuns({ records, machine, request }: Given): readonly (PlannedRun | null)[] {
  const { event, machine: stored } = records;
  const kept = event.value.planned?.[stored.id];
  if (kept === undefined) return acceptedRuns({ records, request });
  return request.runs.map((_, i) => {
    const found = kept.find(({ run }) => run === i);
    if (found === undefined || settingProblems(found.setting, machine, []).length > 0) return null;
    return {
      setting: settingOf(found.setting, machine),
      temperature: celsiusToKelvin(found.temperatureC),
    };
  });
}

function acceptedRuns({ records, request }: Omit<Given, 'machine'>): readonly (PlannedRun | null)[] {
  const air = records.event.value.acceptedAir?.[records.machine.id] ?? [];
  return request.runs.map(({ start }, i) => {
    const setting = request.accepted?.[i];
    const told = air.find((each) => instantFromJson(each.start) === start);
    return setting === undefined
      ? null
      : { setting, temperature: told === undefined ? null : celsiusToKelvin(told.temperatureC) };
  });
}
