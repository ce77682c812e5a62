'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { useOfflineWorker } from './use-offline-worker';

/** Says that a newer version is ready; nothing changes under a plan in use until the person says so. */
export function NewVersionNotice() {
  const { newVersion, useNewVersion } = useOfflineWorker();
  const [later, setLater] = useState(false);
  if (!newVersion || later) return null;
  return (
    <aside aria-label="New version">
      <Notice
        title="A newer version of Heavy Air is ready."
        act={
          <>
            <Button onClick={useNewVersion}>Use it now</Button>
            <Button onClick={() => setLater(true)}>Later</Button>
          </>
        }
      >
        <p>The page opens again with it. Nothing you entered is lost.</p>
      </Notice>
    </aside>
  );
}
