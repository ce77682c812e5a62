'use client';

import { useState } from 'react';
import type { ReadingJson } from '@/lib/contract/event';
import { readingFromJson } from '@/lib/contract/event-from-json';
import { withoutReading, withReading } from './stored-readings';
import { useReadings } from './use-readings';
import { type PlannedNight, readingText, whatMoves } from './what-moved';

/** What the last change of readings did to the plan. */
export type ReadingNews = { readonly title: string; readonly sentences: readonly string[] };

export type ReadingDesk = {
  readonly news: ReadingNews | null;
  readonly dismissNews: () => void;
  readonly keep: (reading: ReadingJson) => Promise<string | undefined>;
  readonly remove: (id: string, reading: ReadingJson) => Promise<string | undefined>;
};

/** Takes readings in, and says what moved by them and why. */
export function useReadingDesk(planned: PlannedNight): ReadingDesk {
  const record = planned.night.records.event.value;
  const [news, setNews] = useState<ReadingNews | null>(null);
  const readings = useReadings(planned.night.records.event.id, () => setNews(null));
  return {
    news,
    dismissNews: () => setNews(null),
    keep: async (reading) => {
      const text = readingText(readingFromJson(reading, 0), planned);
      const sentences = whatMoves(planned, withReading(record, reading).readings);
      const refusal = await readings.keep(reading, `Read: ${text}.`);
      if (refusal === undefined) setNews({ title: `Read: ${text}.`, sentences });
      return refusal;
    },
    remove: async (id, reading) => {
      const text = readingText(readingFromJson(reading, 0), planned);
      const sentences = whatMoves(planned, withoutReading(record, id).readings);
      const refusal = await readings.remove(id, `Reading removed: ${text}.`);
      if (refusal === undefined) setNews({ title: `Removed: ${text}.`, sentences });
      return refusal;
    },
  };
}
