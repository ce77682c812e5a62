'use client';

import { useState } from 'react';
import { type DraftState, useDraft } from '@/components/draft/use-draft';
import type { ReadingJson } from '@/lib/contract/event';
import type { UnitChoice } from '@/lib/units/choice';
import type { PlannedNight } from '@/lib/words/what-moved';
import { blankReading, draftOfReading, READING_SHAPE, type ReadingDraft } from './reading-draft';

type Start = {
  readonly planned: PlannedNight;
  readonly units: UnitChoice;
  readonly id: string;
  readonly initial: ReadingJson | null;
};

/** The draft of a reading. A new one is of the moment the form was opened, however long the typing takes. */
export function useReadingDraft({ planned, units, id, initial }: Start): DraftState<ReadingDraft> {
  const { night, now } = planned;
  const [start] = useState(() => {
    const around = { units, zone: night.zone, now };
    return initial === null ? blankReading(around) : draftOfReading(initial, around);
  });
  return useDraft({
    key: `reading.${night.records.event.id}.${initial === null ? 'new' : id}`,
    initial: start,
    shape: READING_SHAPE,
  });
}
