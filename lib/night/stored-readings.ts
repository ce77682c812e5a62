import type { ReadingJson } from '@/lib/contract/event';
import { readingFromJson } from '@/lib/contract/event-from-json';
import type { EventRecord } from '@/lib/store/records';

/** The name a reading goes by, also where it carries none of its own. */
export function readingId(reading: ReadingJson, index: number): string {
  return readingFromJson(reading, index).id;
}

export function findReading(record: EventRecord, id: string): ReadingJson | null {
  return record.readings.find((reading, i) => readingId(reading, i) === id) ?? null;
}

/** The event with a reading put in, in place of the one of the same name where there is one. */
export function withReading(record: EventRecord, reading: ReadingJson): EventRecord {
  const known = record.readings.some((each, i) => readingId(each, i) === reading.id);
  return {
    ...record,
    readings: known
      ? record.readings.map((each, i) => (readingId(each, i) === reading.id ? reading : each))
      : [...named(record.readings), reading],
  };
}

export function withoutReading(record: EventRecord, id: string): EventRecord {
  return { ...record, readings: named(record.readings).filter((reading) => reading.id !== id) };
}

/** Each with a name of its own, so that none changes its name when one before it goes. */
function named(readings: readonly ReadingJson[]): EventRecord['readings'] {
  return readings.map((reading, i) => ({ ...reading, id: readingId(reading, i) }));
}
