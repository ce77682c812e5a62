import { askToPersist as askBrowser, isPersisted as browserSays } from './ask-to-persist';
import type { Backing } from './backing';
import { openDatabase } from './database';
import { DATABASE_NAME } from './database-name';
import { ownDevice } from './device';
import { openKeeper } from './keeper';
import { dropKeptNight } from './kept-night';
import { ownPage, type Presence, watchPage } from './presence';
import { returningBacking } from './returning';
import type { WriteStamp } from './rules';
import type { SetAside } from './set-aside-record';
import { soundRows } from './sound-rows';
import { storeRecords } from './store-records';
import type { Store, StoreChange, StoreHealth } from './store-type';
import { openTabChannel } from './tab-channel';

export type StoreOptions = {
  /** Milliseconds since 1970. */
  readonly now?: () => number;
  /** Asks the browser not to clear the data by itself; null where it cannot be asked. */
  readonly askToPersist?: () => Promise<boolean | null>;
  /** Whether it has promised that already. */
  readonly isPersisted?: () => Promise<boolean | null>;
  /** Opens the database, or throws why not. */
  readonly open?: (onSuperseded: () => void, presence: Presence) => Promise<Backing>;
  /** The name of this device in the traces of records. */
  readonly device?: () => string;
  /** Hears `pagehide` and `pageshow`. */
  readonly page?: EventTarget;
};

/** Records first written later come later; some thousand may share a millisecond. */
const ORDERS_PER_MS = 1000;

function clockFrom(now: () => number, device: () => string): () => WriteStamp {
  return () => {
    const ms = now();
    return { order: ms * ORDERS_PER_MS, updatedAt: new Date(ms).toISOString(), device: device() };
  };
}

/** Those who listen, and the last word on health. */
function openNews() {
  const listeners = new Set<(change: StoreChange) => void>();
  const tell = (change: StoreChange): void => {
    // Apart from the write: a listener that throws must not make it look failed.
    for (const listener of [...listeners]) queueMicrotask(() => listeners.has(listener) && listener(change));
  };
  return {
    tell,
    subscribe: (listener: (change: StoreChange) => void) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}

/**
 * Opens the store of this browser. Never fails: where there is no database to write to, it works in memory and its
 * health says so.
 */
export async function openStore(options: StoreOptions = {}): Promise<Store> {
  const { now = Date.now, open = openOnDisk, page = ownPage(), device = ownDevice } = options;
  const { askToPersist = askBrowser, isPersisted = browserSays } = options;
  const { tell, subscribe } = openNews();
  let health: StoreHealth = { keeps: 'memory', because: 'failed', promised: null, setAside: [] };
  let closed = false;
  function setHealth(change: Partial<StoreHealth>): void {
    health = { ...health, ...change };
    tell({ kind: 'health', health });
  }
  const channel = openTabChannel(DATABASE_NAME, tell);
  const presence = watchPage(page);
  const keeper = await openKeeper({
    open: (onSuperseded) => returningBacking(() => open(onSuperseded, presence), presence),
    onState: setHealth,
  });
  const readAsides = async (): Promise<void> => setHealth({ setAside: await keeper.asides() });
  await readAsides();
  const promise = openPromise({ askToPersist, isPersisted }, (promised) => setHealth({ promised }));
  const records = storeRecords({
    rows: soundRows(keeper, clockFrom(now, device), readAsides),
    isClosed: () => closed,
    setAsideBefore: () => health.setAside,
    onWritten: (change) => {
      dropKeptNight();
      tell(change);
      if (health.keeps === 'memory') return;
      const { origin: _, ...message } = change;
      channel.tell(message);
      promise.ask();
    },
  });
  async function retry(): Promise<StoreHealth> {
    if (health.keeps === 'memory' && (await keeper.retry())) {
      tell({ kind: 'everything', origin: 'this-tab' });
      channel.tell({ kind: 'everything' });
    }
    await readAsides();
    return health;
  }
  // A page found again by Back has heard nothing of what was written on the pages between.
  presence.onReturn(() => {
    tell({ kind: 'everything', origin: 'other-tab' });
    void retry();
  });
  return {
    ...records,
    subscribe,
    health: () => health,
    retry,
    ...asidesOf(keeper, readAsides, () => health.setAside),
    close: () => {
      closed = true;
      presence.close();
      channel.close();
      keeper.close();
    },
  };
}

const openOnDisk: NonNullable<StoreOptions['open']> = (onSuperseded, presence) =>
  openDatabase({ onSuperseded, presence });

/** What the browser promises about keeping the data: looked up at once, asked for once, after the first write. */
function openPromise(
  { askToPersist, isPersisted }: Required<Pick<StoreOptions, 'askToPersist' | 'isPersisted'>>,
  onPromised: (promised: boolean | null) => void,
): { readonly ask: () => void } {
  let asked = false;
  const say = (promised: Promise<boolean | null>): void => void promised.catch(() => null).then(onPromised);
  say(isPersisted().then((promised) => (asked ? askToPersist() : promised)));
  return {
    ask: () => {
      if (!asked) say(askToPersist());
      asked = true;
    },
  };
}

function asidesOf(
  keeper: Awaited<ReturnType<typeof openKeeper>>,
  readAsides: () => Promise<void>,
  known: () => readonly SetAside[],
): Pick<Store, 'dropSetAside' | 'returnSetAside'> {
  return {
    dropSetAside: async (key) => {
      const aside = known().find((candidate) => candidate.key === key) ?? null;
      await keeper.dropAside(key);
      await readAsides();
      return aside;
    },
    returnSetAside: async (aside) => {
      await keeper.transact({ table: aside.table, id: aside.id }, () => ({
        changes: { rows: [], aside: [aside] },
        answer: null,
      }));
      await readAsides();
    },
  };
}
