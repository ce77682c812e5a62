import type { Plan, PlanProblem, PlanRequest } from '@/lib/plan/types';
import type { Result } from '@/lib/result/result';
import type { Soon } from '@/lib/store/change-record';
import type { EventRecord } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { type NightRecords, nightFrom } from './night';
import { withAcceptedPlan } from './records';

/** Who plans what has to be planned before something is kept, and as of when. */
export type PlansFor = {
  readonly now: Instant;
  readonly plan: (request: PlanRequest) => Promise<Result<Plan, PlanProblem>>;
};

/**
 * The event with the plan that what was told leads to: whoever acts on a plan has accepted it, and a swap that is asked
 * about later must be one of the plan that stands now and not of the one before.
 */
export async function accepting(
  record: EventRecord,
  records: Omit<NightRecords, 'event'> & { readonly event: { readonly id: string } },
  { now, plan }: PlansFor,
): Promise<EventRecord> {
  const event = { id: records.event.id, revision: 0, updatedAt: '', value: record };
  const told = nightFrom({ ...records, event });
  if (!told.ok) return record;
  const planned = await plan({ ...told.value.request, now });
  return planned.ok ? withAcceptedPlan(record, records.machine.id, planned.value) : record;
}

/** Plans the night that a change of its event will lead to, and what the change itself asks for: before it is made. */
export async function planAfter(
  change: (event: EventRecord) => Soon<EventRecord>,
  records: NightRecords,
  { now, plan }: PlansFor,
): Promise<void> {
  const event = { ...records.event, value: await change(records.event.value) };
  const told = nightFrom({ ...records, event });
  if (told.ok) await plan({ ...told.value.request, now });
}
