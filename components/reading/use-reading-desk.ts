'use client';

import { useState } from 'react';
import { useWrite } from '@/components/store/use-write';
import type { ReadingJson } from '@/lib/contract/event';
import { readingFromJson } from '@/lib/contract/event-from-json';
import { findReading, withoutReading, withReading } from '@/lib/night/stored-readings';
import type { PlanRequest } from '@/lib/plan/types';
import { pagePlanner } from '@/lib/planner/page-planner';
import type { EventRecord } from '@/lib/store/records';
import { type PlannedNight, readingText, whatMoves } from '@/lib/words/what-moved';

/** What the last change of readings did to the plan. */
export type ReadingNews = { readonly title: string; readonly sentences: readonly string[] };

export type ReadingDesk = {
  readonly news: ReadingNews | null;
  readonly dismissNews: () => void;
  readonly keep: (reading: ReadingJson) => Promise<string | undefined>;
  readonly remove: (id: string, reading: ReadingJson) => Promise<string | undefined>;
};

const plan = (request: PlanRequest) => pagePlanner.ask(request).plan;

/** Takes readings in, and says what moved by them and why. */
export function useReadingDesk(planned: PlannedNight): ReadingDesk {
  const record = planned.night.records.event.value;
  const [news, setNews] = useState<ReadingNews | null>(null);
  const write = useWrite();
  /** Written at once, with a way back that leaves all but this reading alone. */
  const tell = (id: string, words: string, change: (current: EventRecord) => EventRecord) =>
    write.change({ table: 'events', id: planned.night.records.event.id }, change, words, {
      part: (current) => findReading(current, id),
      back: (current, before) => {
        const was = findReading(before, id);
        return was === null ? withoutReading(current, id) : withReading(current, { ...was, id });
      },
      onUndo: () => setNews(null),
    });
  return {
    news,
    dismissNews: () => setNews(null),
    keep: async (reading) => {
      const text = readingText(readingFromJson(reading, 0), planned);
      const sentences = await whatMoves(planned, withReading(record, reading).readings, plan);
      const refusal = await tell(reading.id ?? '', `Read: ${text}.`, (current) =>
        withReading(current, reading),
      );
      if (refusal === undefined) setNews({ title: `Read: ${text}.`, sentences });
      return refusal;
    },
    remove: async (id, reading) => {
      const text = readingText(readingFromJson(reading, 0), planned);
      const sentences = await whatMoves(planned, withoutReading(record, id).readings, plan);
      const refusal = await tell(id, `Reading removed: ${text}.`, (current) => withoutReading(current, id));
      if (refusal === undefined) setNews({ title: `Removed: ${text}.`, sentences });
      return refusal;
    },
  };
}
