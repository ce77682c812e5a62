'use client';

import { useEffect, useRef } from 'react';
import { useHash } from '@/components/ui/use-hash';
import { useForecast } from '@/components/weather/use-forecast';
import { ClubDesk } from './club-desk';
import styles from './club-page.module.css';
import { NoClub } from './no-club';
import { PrintView } from './print/print-view';
import { useBriefing } from './use-briefing';
import { useClub } from './use-club';
import { WallView } from './wall/wall-view';

/** The club's night: at the desk, on the trailer wall, or on paper. */
export function ClubRoom() {
  const now = useClub();
  const view = useHash();
  const last = useRef<ThereProps | null>(null);
  useEffect(() => {
    if (now.status === 'there') last.current = now;
  });
  // A form stays with what was typed, also where another tab deleted the last event under it.
  const state = now.status === 'no-event' && isForm(view) ? (last.current ?? now) : now;
  if (state.status === 'opening')
    return (
      <main className={styles.words} aria-busy="true">
        <h1>Club</h1>
        <p>Opening the event…</p>
      </main>
    );
  if (state.status === 'no-event') return <NoClub units={state.preferences} />;
  return <PlannedClub {...state} />;
}

const isForm = (view: string): boolean => !['', 'wall', 'print', 'new'].includes(view);

type ThereProps = Extract<ReturnType<typeof useClub>, { status: 'there' }>;

function PlannedClub({ records, club, isChosen, now, preferences }: ThereProps) {
  const view = useHash();
  const briefing = useBriefing(club, now);
  // Asked for in every view, so that the wall follows the forecast too.
  const forecast = useForecast(records.event, now);
  const props = { records, club, now, preferences, briefing, forecast };
  if (view === 'wall') return <WallView {...props} />;
  if (view === 'print' && briefing !== null) return <PrintView {...props} briefing={briefing} />;
  return <ClubDesk {...props} view={view} isChosen={isChosen} />;
}
