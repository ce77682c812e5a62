import type { CDPSession, Page } from '@playwright/test';

/** One answer a page asked for. */
export type Transfer = {
  readonly url: string;
  readonly kind: string;
  /** Named by the HTML itself, so asked for before any script of ours has run. */
  readonly first: boolean;
  bytes: number;
};

/** Every request of the page from now on, with the bytes that came over the wire for it. */
export async function watchTransfers(page: Page): Promise<() => readonly Transfer[]> {
  const session: CDPSession = await page.context().newCDPSession(page);
  const transfers = new Map<string, Transfer>();
  session.on('Network.requestWillBeSent', ({ requestId, request, type, initiator }) => {
    const first = initiator.type === 'parser' || initiator.type === 'other';
    transfers.set(requestId, { url: request.url, kind: type ?? 'Other', first, bytes: 0 });
  });
  session.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    const transfer = transfers.get(requestId);
    if (transfer !== undefined) transfer.bytes = encodedDataLength;
  });
  await session.send('Network.enable');
  return () => [...transfers.values()].filter(({ url }) => url.startsWith('http'));
}

export const kilobytes = (transfers: readonly Transfer[]): number =>
  transfers.reduce((sum, { bytes }) => sum + bytes, 0) / 1000;

/** Down to the end, so that everything that waits to be near the screen is asked for. */
export async function scrollThrough(page: Page): Promise<void> {
  await page.evaluate(async () => {
    for (let y = 0; y < document.documentElement.scrollHeight; y += 400) {
      window.scrollTo(0, y);
      await new Promise(requestAnimationFrame);
    }
  });
}
