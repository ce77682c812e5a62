import { readingFromJson } from '@/lib/contract/event-from-json';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import type { PlaceOffset } from '@/lib/plan/place-offset';
import type { PlanRequest } from '@/lib/plan/types';
import type { EventRecord } from '@/lib/store/records';
import { countedOn } from './place-taught';

/** What the planner is asked the same way for every machine of an event. */
export function eventRequest(
  record: EventRecord,
  placeOffset: PlaceOffset | undefined,
): Pick<PlanRequest, 'readings' | 'placeOffset' | 'options'> {
  const { swapMinutes, ride } = record.event;
  return {
    readings: record.readings.map(readingFromJson),
    ...countedOn(record, placeOffset),
    options: { ...DEFAULT_OPTIONS, swapMinutes, oneSetting: ride },
  };
}
