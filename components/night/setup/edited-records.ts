import { recordWithEvent } from '@/components/event/record-with-event';
import type { HoursReading } from '@/components/hours/read-hours';
import type { TypedEvent } from '@/lib/fields/event/read-event';
import type { EventRecord } from '@/lib/store/records';

/** Whoever edits the invented night makes it their own. */
export function withEditedEvent(record: EventRecord, typed: TypedEvent): EventRecord {
  return { ...recordWithEvent(record, typed), demo: false };
}

/** The elevation was typed with the hours and belongs to the event. */
export function withEditedHours(record: EventRecord, { typed, elevationM }: HoursReading): EventRecord {
  return { ...record, typed, event: { ...record.event, elevationM }, demo: false };
}

/** An event nothing has been said about yet; it follows the forecast of its place from the start, where it has one. */
export function newEventRecord(
  { event }: TypedEvent,
  { machineId, forecastId }: { readonly machineId: string; readonly forecastId: string },
): EventRecord {
  return {
    event,
    machineIds: [machineId],
    typed: null,
    forecastId: event.place === undefined ? null : forecastId,
    readings: [],
    accepted: {},
    fitted: {},
    made: {},
    demo: false,
  };
}
