'use client';

import dynamic from 'next/dynamic';
import styles from './trail.module.css';

const loadRoom = () => import('./trail-room').then((module) => module.TrailRoom);

const TrailRoom = dynamic(loadRoom, { ssr: false, loading: () => <p>Opening the trail…</p> });

// Asked for while the page around it is still waking up, not after.
if (typeof window !== 'undefined') void loadRoom();

/** Spring against midwinter, one setting for a whole ride, and a card for the pocket. */
export function TrailPage() {
  return (
    <main className={styles.page}>
      <div className={styles.head}>
        <h1>Trail</h1>
        <p>Screw, clip, pilot and main for each kind of day, for a ride, and on a card.</p>
      </div>
      <TrailRoom />
    </main>
  );
}
