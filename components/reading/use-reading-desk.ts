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

type DeskOf = {
  /** False where the plan is one of many: what moves in it is not what moves for all. */
  readonly tellsMoves: boolean;
};

/** Takes readings in, and says what moved by them and why. */
export function useReadingDesk(planned: PlannedNight, { tellsMoves }: DeskOf): ReadingDesk {
  const record = planned.night.records.event.value;
  const [news, setNews] = useState<ReadingNews | null>(null);
  const write = useWrite();
  /** Written at once, with a way back that leaves all but this reading alone; spoken once, and shown until seen. */
  const tell = async (told: ReadingNews, id: string, change: (current: EventRecord) => EventRecord) => {
    const key = { table: 'events', id: planned.night.records.event.id } as const;
    const words = { text: told.title, spoken: told.sentences.join(' ') };
    const refusal = await write.change(key, change, words, {
      part: (current) => findReading(current, id),
      back: (current, before) => {
        const was = findReading(before, id);
        return was === null ? withoutReading(current, id) : withReading(current, { ...was, id });
      },
      onUndo: () => setNews(null),
    });
    if (refusal === undefined) setNews(told);
    return refusal;
  };
  const movedBy = async ({ readings }: EventRecord) => (tellsMoves ? whatMoves(planned, readings, plan) : []);
  return {
    news,
    dismissNews: () => setNews(null),
    keep: async (reading) => {
      const text = readingText(readingFromJson(reading, 0), planned);
      const sentences = await movedBy(withReading(record, reading));
      return tell({ title: `Read: ${text}.`, sentences }, reading.id ?? '', (current) =>
        withReading(current, reading),
      );
    },
    remove: async (id, reading) => {
      const text = readingText(readingFromJson(reading, 0), planned);
      const sentences = await movedBy(withoutReading(record, id));
      return tell({ title: `Reading removed: ${text}.`, sentences }, id, (current) =>
        withoutReading(current, id),
      );
    },
  };
}
