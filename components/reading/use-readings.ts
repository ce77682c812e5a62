'use client';

import { changeRecord } from '@/components/store/change-record';
import { useOpenedStore } from '@/components/store/store-provider';
import { useToast } from '@/components/ui/toast';
import type { ReadingJson } from '@/lib/contract/event';
import type { EventRecord } from '@/lib/store/records';
import { findReading, withoutReading, withReading } from './stored-readings';

export type Readings = {
  /** What was not kept says why; undefined where it was. */
  readonly keep: (reading: ReadingJson, words: string) => Promise<string | undefined>;
  readonly remove: (id: string, words: string) => Promise<string | undefined>;
};

const NOT_KEPT = 'That was not kept: the night was changed or removed meanwhile. Look again and repeat it.';

/** Writes readings at once, each with a way back that leaves everything else alone. */
export function useReadings(eventId: string, onUndone: () => void): Readings {
  const store = useOpenedStore()?.store;
  const say = useToast();
  async function write(
    id: string,
    { words, change }: { readonly words: string; readonly change: (record: EventRecord) => EventRecord },
  ): Promise<string | undefined> {
    if (store === undefined) return NOT_KEPT;
    const written = await changeRecord(store, { table: 'events', id: eventId, change });
    if (!written.ok) {
      say({ text: NOT_KEPT });
      return NOT_KEPT;
    }
    const was = findReading(written.value.before, id);
    const back = (record: EventRecord) =>
      was === null ? withoutReading(record, id) : withReading(record, { ...was, id });
    const undo = () => {
      onUndone();
      void changeRecord(store, { table: 'events', id: eventId, change: back });
    };
    say({ text: words, act: { label: 'Undo', do: undo } });
    return undefined;
  }
  return {
    keep: (reading, words) =>
      write(reading.id ?? '', { words, change: (record) => withReading(record, reading) }),
    remove: (id, words) => write(id, { words, change: (record) => withoutReading(record, id) }),
  };
}
