'use client';

import { useEffect, useState } from 'react';
import { useStoreReads } from '@/components/store/store-provider';
import { whenAtRest } from '@/components/ui/when-at-rest';

const WORKER = '/offline-worker.js';

export type OfflineWorker = {
  /** A newer version is installed and waits for a yes. */
  readonly newVersion: boolean;
  /** Changes to the newer version and opens the page again with it. */
  readonly useNewVersion: () => void;
};

/** Registers the worker that keeps every page, and notices when a newer version waits. */
export function useOfflineWorker(): OfflineWorker {
  const [waiting, setWaiting] = useState<ServiceWorker | null>(null);
  // The store's code is the last a page waits for before it can answer.
  const opened = useStoreReads() !== null;
  useEffect(() => {
    if (!opened) return;
    // A development build has no worker, and an old one would hide what is being worked on.
    if (process.env.NODE_ENV !== 'production' || !('serviceWorker' in navigator)) return;
    let gone = false;
    const follow = (registration: ServiceWorkerRegistration) => {
      const look = () => {
        // Without a worker in charge this is the first visit, and there is nothing older to leave.
        if (!gone && navigator.serviceWorker.controller !== null) setWaiting(registration.waiting);
      };
      look();
      registration.addEventListener('updatefound', () =>
        registration.installing?.addEventListener('statechange', look),
      );
    };
    // The answer comes before the copies for a night without signal: on a slow line the two would share it.
    const stopWaiting = whenAtRest(() => {
      // Refused registration (private mode, http on a local network) leaves a page that works while there is a network.
      navigator.serviceWorker.register(WORKER, { scope: '/' }).then(follow, () => undefined);
    });
    return () => {
      gone = true;
      stopWaiting();
    };
  }, [opened]);
  return { newVersion: waiting !== null, useNewVersion: () => takeOver(waiting) };
}

function takeOver(waiting: ServiceWorker | null): void {
  navigator.serviceWorker.addEventListener('controllerchange', () => window.location.reload(), {
    once: true,
  });
  waiting?.postMessage('use-new-version');
}
