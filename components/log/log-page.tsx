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
        What ran, in what air, and how it was.{' '}
        <span data-for="screen">
          Say it after each run: from your verdicts the machine’s page learns how far its mains move with the
          air.
        </span>
      </p>
      <LogRoom />
    </main>
  );
}
