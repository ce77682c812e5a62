import type { EventRecord, LogRecord, Stored } from '@/lib/store/records';
import { isOfNight } from './night';

/**
 * A run typed by hand with the event it belongs to, where its machine takes part in one then: a lean run counts for
 * tonight however it came into the log.
 */
export function withItsEvent(entry: LogRecord, events: readonly Stored<EventRecord>[]): LogRecord {
  if (entry.eventId !== null) return entry;
  const { machineId, at } = entry;
  const event = events.findLast(
    ({ value }) => value.machineIds.includes(machineId) && isOfNight(value, machineId, at),
  );
  return event === undefined ? entry : { ...entry, eventId: event.id };
}
