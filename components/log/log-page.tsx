'use client';

import dynamic from 'next/dynamic';
import styles from './log.module.css';

const LogRoom = dynamic(() => import('./log-room').then((module) => module.LogRoom), {
  ssr: false,
  loading: () => <p>Opening the log…</p>,
});

export function LogPage() {
  return (
    <main className={styles.page}>
      <h1>Run log</h1>
      <p>
        What ran, in what air, and how it was. A verdict after each run is what the response is learned from,
        on the machine’s page.
      </p>
      <LogRoom />
    </main>
  );
}
