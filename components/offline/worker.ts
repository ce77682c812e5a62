/// <reference lib="webworker" />
import { Serwist } from 'serwist';
import { BOARD_DOORS, BOARD_PAGE, boardDoorKey } from '@/lib/share/board-address';
import { IT_IS_IN } from '@/lib/words/it-is-in';
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
  const message = readMessage(event.notification.data);
  event.waitUntil(
    message === null ? showPage() : event.action === 'done' ? tellDone(message) : showBoard(message.board),
  );
});

/** What a board's server sends (`app/api/_boards/replan.ts`). */
type BoardMessage = {
  readonly title: string;
  readonly body: string;
  readonly board: string;
  readonly machine: string;
  /** The setting "It is in" speaks of; null where there is none. */
  readonly done: object | null;
};

function readMessage(data: unknown): BoardMessage | null {
  if (typeof data !== 'object' || data === null) return null;
  const { title, body, board, machine, done = null } = data as Partial<Record<keyof BoardMessage, unknown>>;
  const texts = [title, body, board, machine];
  if (!texts.every((text) => typeof text === 'string') || typeof done !== 'object') return null;
  return { title: String(title), body: String(body), board: String(board), machine: String(machine), done };
}

self.addEventListener('push', (event) => {
  const message = readMessage(event.data?.json() ?? null);
  if (message === null) return;
  const options: NotificationOptions & { readonly actions: readonly object[] } = {
    body: message.body,
    // A newer message of the same machine takes the place of the older.
    tag: `${message.board}.${message.machine}`,
    data: message,
    actions: message.done === null ? [] : [{ action: 'done', title: IT_IS_IN }],
  };
  event.waitUntil(self.registration.showNotification(message.title, options));
});

type Door = { readonly hash: string; readonly secret: string };

async function doorOf(board: string): Promise<Door | null> {
  const kept = await (await caches.open(BOARD_DOORS)).match(boardDoorKey(board));
  return kept === undefined ? null : await kept.json();
}

/** Says that it is in without a page; where that fails, the page is shown, which says why. */
async function tellDone({ board, machine, done }: BoardMessage): Promise<void> {
  const door = await doorOf(board);
  if (door === null) return showBoard(board);
  const told = await fetch(`/api/boards/${board}/done`, {
    method: 'POST',
    headers: { authorization: `Bearer ${door.secret}`, 'content-type': 'application/json' },
    body: JSON.stringify({ machine, setting: done }),
  }).catch(() => null);
  if (told?.ok !== true) await showBoard(board);
}

async function showBoard(board: string): Promise<void> {
  const door = await doorOf(board);
  const address = `${BOARD_PAGE}${door === null ? '' : `#${door.hash}`}`;
  const windows = await self.clients.matchAll({ type: 'window' });
  const open = windows.find(({ url }) => new URL(url).pathname === BOARD_PAGE);
  if (open === undefined) await self.clients.openWindow(address);
  else await (await open.navigate(address))?.focus();
}

async function showPage(): Promise<void> {
  const [open] = await self.clients.matchAll({ type: 'window' });
  if (open === undefined) await self.clients.openWindow('/');
  else await open.focus();
}
