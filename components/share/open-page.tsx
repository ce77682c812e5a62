'use client';

import dynamic from 'next/dynamic';
import styles from './share.module.css';

/** The planner comes with the room, after the words. */
const OpenRoom = dynamic(() => import('./open-room').then((module) => module.OpenRoom), {
  ssr: false,
  loading: () => <p>Looking at it…</p>,
});

/** Where a link leads: a look at somebody's night, which changes nothing here. */
export function OpenPage() {
  return (
    <main className={styles.page}>
      <h1>Open a link</h1>
      <OpenRoom />
    </main>
  );
}
