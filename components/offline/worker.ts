/// <reference lib="webworker" />
import { Serwist } from 'serwist';
import { healKept, type KeptFile } from './heal-kept';

declare const self: ServiceWorkerGlobalScope & {
  /** Every page and asset of one build, written in by the build. */
  readonly HEAVY_AIR_FILES: readonly KeptFile[];
};

/** Pages are the same whatever their query says, so any query finds the kept page. */
const worker = new Serwist({
  precacheEntries: self.HEAVY_AIR_FILES.map(({ url, revision }) => ({ url, revision: revision ?? null })),
  precacheOptions: { ignoreURLParametersMatching: [/.*/], cleanupOutdatedCaches: true, concurrency: 6 },
  // A new version waits until the person says yes: nothing changes under a plan in use.
  skipWaiting: false,
  clientsClaim: true,
});

/** The page that was asked for comes first [ms]. */
const HEAL_AFTER_MS = 3_000;
/** A worker that goes on living looks again after this long [ms]. */
const HEAL_AGAIN_MS = 600_000;
let healedAt: number | null = null;

/** A browser may throw away what was kept, or spoil it, and tells nobody: so each visit looks whether all is there. */
self.addEventListener('fetch', (event) => {
  if (event.request.mode !== 'navigate') return;
  if (healedAt !== null && performance.now() - healedAt < HEAL_AGAIN_MS) return;
  healedAt = performance.now();
  event.waitUntil(
    new Promise((later) => {
      setTimeout(later, HEAL_AFTER_MS);
    }).then(async () =>
      healKept(self.HEAVY_AIR_FILES, {
        cache: await self.caches.open(worker.precacheStrategy.cacheName),
        keyOf: (url) => worker.getPrecacheKeyForUrl(url),
      }),
    ),
  );
});

// After the listener above: an event that is answered goes no further.
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
