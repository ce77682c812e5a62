'use client';

import dynamic from 'next/dynamic';
import styles from './club-page.module.css';

/** What stands here until the event has been read from this browser. */
function OpeningClub() {
  return (
    <main className={styles.words} aria-busy="true">
      <h1>Club</h1>
      <p>Opening the event…</p>
      <p>One place, one forecast, every racer: who puts in which jets when, on one sheet.</p>
    </main>
  );
}

const ClubRoom = dynamic(() => import('./club-room').then((module) => module.ClubRoom), {
  ssr: false,
  loading: OpeningClub,
});

export function ClubPage() {
  return <ClubRoom />;
}
