'use client';

import { useMemo } from 'react';
import type { ClubViewProps } from '@/components/club/view-props';
import type { Sheet } from '@/components/paper/sheet-pages-view';
import type { Briefing } from '@/lib/club/briefing';
import type { ClubNames } from '@/lib/words/club';
import { racerFacts } from '@/lib/words/print-facts';
import { RacerSheet } from './racer-sheet';

type Told = ClubViewProps & { readonly briefing: Briefing };

/** One sheet for each racer who has a plan, in the order of the roster. */
export function useRacerSheets({ records, club, briefing, now, preferences }: Told, names: ClubNames) {
  const series = club.night?.series ?? null;
  return useMemo(
    () =>
      briefing.planned.map(
        (planned): Sheet => ({
          key: planned.racer.id,
          name: names.racer(planned.racer.id),
          body: (
            <RacerSheet
              planned={planned}
              briefing={briefing}
              names={names}
              event={records.event.value.event}
              facts={racerFacts(records, planned.racer.id)}
              now={now}
              units={preferences}
              series={series}
            />
          ),
        }),
      ),
    [briefing, names, records, now, preferences, series],
  );
}
