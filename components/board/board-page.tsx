'use client';

import dynamic from 'next/dynamic';
import styles from './board.module.css';

const BoardRoom = dynamic(() => import('./board-room').then((module) => module.BoardRoom), {
  ssr: false,
  loading: () => <p>Opening the board…</p>,
});

/** Where a board's links lead. */
export function BoardPage() {
  return (
    <main className={styles.page}>
      <BoardRoom />
    </main>
  );
}
