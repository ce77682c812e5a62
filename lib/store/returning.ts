import type { Backing } from './backing';
import type { Presence } from './presence';

/**
 * A disk for a page that may be left and found again: nothing is asked of it while the page is away, and what the
 * leaving cut off is done once more on a new connection when the page is back. Throws what `open` throws.
 */
export async function returningBacking(open: () => Promise<Backing>, presence: Presence): Promise<Backing> {
  type Visit = { readonly disk: Promise<Backing>; readonly departures: number };
  let visit: Visit | null = null;
  function ofThisVisit(): Promise<Backing> {
    const departures = presence.departures();
    if (visit?.departures !== departures) {
      forget(visit?.disk);
      visit = { disk: open(), departures };
    }
    return visit.disk;
  }
  async function through<R>(work: (disk: Backing) => Promise<R>): Promise<R> {
    for (;;) {
      await presence.here();
      const departures = presence.departures();
      try {
        const disk = await ofThisVisit();
        if (departures === presence.departures()) return await work(disk);
      } catch (error) {
        if (departures === presence.departures()) throw error;
      }
    }
  }
  // Opened before it is handed over: whoever asks must learn why it cannot be.
  await through(() => Promise.resolve());
  return {
    read: (scope) => through((disk) => disk.read(scope)),
    transact: (scope, decide) => through((disk) => disk.transact(scope, decide)),
    asides: () => through((disk) => disk.asides()),
    dropAside: (key) => through((disk) => disk.dropAside(key)),
    close: () => forget(visit?.disk),
  };
}

function forget(disk: Promise<Backing> | undefined): void {
  disk?.then(
    (opened) => opened.close(),
    () => undefined,
  );
}
