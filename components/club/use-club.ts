'use client';

import { useMemo } from 'react';
import { useNow } from '@/components/store/use-now';
import { usePreferences } from '@/components/store/use-preferences';
import { useTable } from '@/components/store/use-table';
import { chosenEvent } from '@/lib/night/chosen';
import { type Club, type ClubRecords, clubRecordsOf, clubSteps } from '@/lib/night/club';
import type { Preferences } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { useSteps } from './use-steps';

export type ClubState =
  | { readonly status: 'opening' }
  | { readonly status: 'no-event'; readonly preferences: Preferences }
  | {
      readonly status: 'there';
      readonly records: ClubRecords;
      readonly club: Club;
      /** False while the event that was chosen last is still being read, and what is here is of the one before. */
      readonly isChosen: boolean;
      readonly now: Instant;
      readonly preferences: Preferences;
    };

/** The chosen event with everybody in it, read anew with every change of its records, also those of other tabs. */
export function useClub(): ClubState {
  const now = useNow();
  const { preferences, known } = usePreferences();
  const events = useTable('events');
  const machines = useTable('machines');
  const boxes = useTable('boxes');
  const forecasts = useTable('forecasts');
  const log = useTable('log');
  const event = events === null ? null : chosenEvent(events, preferences);
  const records = useMemo<ClubRecords | null>(() => {
    if (event === null || events === null || machines === null) return null;
    if (boxes === null || forecasts === null || log === null) return null;
    return clubRecordsOf(event, { events, machines, boxes, forecasts, log });
  }, [event, events, machines, boxes, forecasts, log]);
  const read = useMemo(() => (records === null ? null : () => readingSteps(records)), [records]);
  const there = useSteps(read);
  if (!known || now === null || events === null) return { status: 'opening' };
  if (event === null) return { status: 'no-event', preferences };
  if (there === null) return { status: 'opening' };
  return { status: 'there', ...there, isChosen: there.records.event.id === event.id, now, preferences };
}

/** The club and the very records it was read from, kept together so that neither is shown beside a newer other. */
function* readingSteps(
  records: ClubRecords,
): Generator<void, { readonly records: ClubRecords; readonly club: Club }> {
  return { records, club: yield* clubSteps(records) };
}
