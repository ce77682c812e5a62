'use client';

import dynamic from 'next/dynamic';
import styles from './compare.module.css';

const CompareRoom = dynamic(() => import('./compare-room').then((module) => module.CompareRoom), {
  ssr: false,
  loading: () => <p>Opening the comparisons…</p>,
});

export function ComparePage() {
  return (
    <main className={styles.page}>
      <h1>Compare</h1>
      <p>
        What did the part do? Runs before and after are brought to the same air and the same mixture; what is
        left is the part’s. Being rich before makes many parts look good.
      </p>
      <CompareRoom />
    </main>
  );
}
