import type { EventRecord } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { type NightRecords, nightFrom, planNight } from './night';
import { withAcceptedPlan } from './records';

/**
 * The event with the plan that what was told leads to: whoever acts on a plan has accepted it, and a swap that is asked
 * about later must be one of the plan that stands now and not of the one before.
 */
export function accepting(
  record: EventRecord,
  records: Omit<NightRecords, 'event'> & { readonly event: { readonly id: string } },
  now: Instant,
): EventRecord {
  const event = { id: records.event.id, revision: 0, updatedAt: '', value: record };
  const told = nightFrom({ ...records, event });
  const plan = told.ok ? planNight(told.value, now) : told;
  return plan.ok ? withAcceptedPlan(record, records.machine.id, plan.value) : record;
}
