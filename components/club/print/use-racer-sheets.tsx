'use client';

import { useMemo } from 'react';
import type { ClubViewProps } from '@/components/club/view-props';
import type { Sheet } from '@/components/paper/sheet-pages-view';
import type { Briefing } from '@/lib/club/briefing';
import { classOf } from '@/lib/store/racer-event';
import type { ClubNames } from '@/lib/words/club';
import { RacerSheet } from './racer-sheet';

type Told = ClubViewProps & { readonly briefing: Briefing };

/** One sheet for each racer who has a plan, in the order of the roster. */
export function useRacerSheets({ records, club, briefing, now, preferences }: Told, names: ClubNames) {
  const { value: record } = records.event;
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
              event={record.event}
              className={classOf(record, planned.racer.id)?.name ?? ''}
              now={now}
              units={preferences}
              series={series}
            />
          ),
        }),
      ),
    [briefing, names, record, now, preferences, series],
  );
}
