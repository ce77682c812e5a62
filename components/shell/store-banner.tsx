'use client';

import { useState } from 'react';
import { useStoreHealth, useStoreReads } from '@/components/store/store-provider';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import type { MemoryReason } from '@/lib/store/store-type';
import styles from './store-banner.module.css';

const WHY: Record<MemoryReason, string> = {
  'no-database':
    'This browser keeps nothing here (private window or a locked setting). Use an ordinary window to keep your night.',
  blocked: 'Another tab holds an older version open. Close the other tabs of Heavy Air, then try again.',
  full: 'The storage of this device is full. Free some space, then try again.',
  'newer-app': 'A newer version of Heavy Air has used this data. Reload the page to get that version.',
  silent:
    'The browser’s database does not answer, so what you kept before is not shown. Close other tabs of Heavy Air, then try again; if that does not help, close the browser and open it again.',
  failed: 'The browser’s database failed. Try again; if that does not help, reload the page.',
};

/** Says when what is entered will be gone after a reload, and what to do about it. */
export function StoreBanner() {
  const store = useStoreReads();
  const health = useStoreHealth();
  const [trying, setTrying] = useState(false);
  if (store === null || health === null || health.because === null) return null;
  async function retry() {
    setTrying(true);
    await store?.retry();
    setTrying(false);
  }
  return (
    <aside className={styles.place} aria-label="What is kept">
      <Notice
        tone="caution"
        title="What you enter now is gone after a reload."
        act={
          <Button disabled={trying} onClick={() => void retry()}>
            {trying ? 'Trying…' : 'Try again'}
          </Button>
        }
      >
        <p>{WHY[health.because]}</p>
      </Notice>
    </aside>
  );
}
