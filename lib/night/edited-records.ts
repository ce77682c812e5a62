import type { EventJson } from '@/lib/contract/event';
import { typedHoursAt } from '@/lib/store/pressure-answers';
import type { EventRecord } from '@/lib/store/records';
import { withoutOffsetElsewhere } from './moved-place';
import { recordWithEvent, type TypedEvent } from './record-with-event';

/** Whoever edits the invented night makes it their own. */
export function withEditedEvent(record: EventRecord, typed: TypedEvent): EventRecord {
  return { ...recordWithEvent(record, typed), demo: false };
}

type TypedHours = Pick<EventRecord, 'typed'> & { readonly elevationM: number };

/** The elevation was typed with the hours and belongs to the event. */
export function withEditedHours(record: EventRecord, { typed, elevationM }: TypedHours): EventRecord {
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

/** The event at its place and following the forecast there; `freshId` names the forecast where it has none yet. */
export function withForecastAt(
  record: EventRecord,
  { place, elevationM }: Required<Pick<EventJson, 'place' | 'elevationM'>>,
  freshId: string,
): EventRecord {
  return {
    ...withoutOffsetElsewhere(record, place),
    event: { ...record.event, place, elevationM },
    typed: typedHoursAt(record, elevationM),
    forecastId: record.forecastId ?? freshId,
    demo: false,
  };
}
