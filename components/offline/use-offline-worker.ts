'use client';

import { useEffect, useState } from 'react';

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
  useEffect(() => {
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
    const stopWaiting = whenAtRest(() => {
      // Refused registration (private mode, http on a local network) leaves a page that works while there is a network.
      navigator.serviceWorker.register(WORKER, { scope: '/' }).then(follow, () => undefined);
    });
    return () => {
      gone = true;
      stopWaiting();
    };
  }, []);
  return { newVersion: waiting !== null, useNewVersion: () => takeOver(waiting) };
}

/** The answer comes before the copies for a night without signal, and on a slow line the two would share it. */
const REST_MS = 5000;

/** Once the page has loaded and has nothing left to do, or soon after loading where the browser does not tell. */
function whenAtRest(work: () => void): () => void {
  let stopped = false;
  const start = () => {
    if (!stopped) work();
  };
  const wait = () => {
    if ('requestIdleCallback' in window) window.requestIdleCallback(start, { timeout: REST_MS });
    else setTimeout(start, REST_MS / 5);
  };
  if (document.readyState === 'complete') wait();
  else window.addEventListener('load', wait, { once: true });
  return () => {
    stopped = true;
  };
}

function takeOver(waiting: ServiceWorker | null): void {
  navigator.serviceWorker.addEventListener('controllerchange', () => window.location.reload(), {
    once: true,
  });
  waiting?.postMessage('use-new-version');
}
