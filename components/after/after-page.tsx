'use client';

import dynamic from 'next/dynamic';
import styles from './after.module.css';

const AfterRoom = dynamic(() => import('./after-room').then((module) => module.AfterRoom), {
  ssr: false,
  loading: () => <p>Looking back…</p>,
});

export function AfterPage() {
  return (
    <main className={styles.page}>
      <h1>After the night</h1>
      <AfterRoom />
    </main>
  );
}
