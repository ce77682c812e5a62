'use client';

import dynamic from 'next/dynamic';
import styles from './backup.module.css';

/** What reads records comes after the words. */
const SetAsideList = dynamic(() => import('./set-aside-list').then((module) => module.SetAsideList), {
  ssr: false,
  loading: () => <p>Looking…</p>,
});

/** What lost in a merge, or could not be read, until somebody has looked at it. */
export function SetAsidePage() {
  return (
    <main className={styles.page}>
      <h1>Set aside</h1>
      <p className={styles.words}>
        Where two devices changed the same thing without knowing of each other, one version stands and the
        other waits here. So does what was removed on one of them and stood on the other. Nothing here goes by
        itself.
      </p>
      <SetAsideList />
    </main>
  );
}
