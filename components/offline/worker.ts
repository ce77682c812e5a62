/// <reference lib="webworker" />
import { type PrecacheEntry, Serwist } from 'serwist';

declare const self: ServiceWorkerGlobalScope & {
  /** Every page and asset of one build, written in by the build. */
  readonly HEAVY_AIR_FILES: readonly PrecacheEntry[];
};

/** Pages are the same whatever their query says, so any query finds the kept page. */
const worker = new Serwist({
  precacheEntries: [...self.HEAVY_AIR_FILES],
  precacheOptions: { ignoreURLParametersMatching: [/.*/], cleanupOutdatedCaches: true, concurrency: 6 },
  // A new version waits until the person says yes: nothing changes under a plan in use.
  skipWaiting: false,
  clientsClaim: true,
});

worker.addEventListeners();

self.addEventListener('message', (event) => {
  if (event.data === 'use-new-version') void self.skipWaiting();
});

/** A notification leads back to the page it speaks for. */
self.addEventListener('notificationclick', (event) => {
  event.notification.close();
  event.waitUntil(showPage());
});

async function showPage(): Promise<void> {
  const [open] = await self.clients.matchAll({ type: 'window' });
  if (open === undefined) await self.clients.openWindow('/');
  else await open.focus();
}
