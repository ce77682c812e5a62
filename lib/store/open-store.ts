import type { Backing } from './backing';
import { DATABASE_NAME, openDatabase } from './database';
import { openKeeper } from './keeper';
import type { Clock } from './rules';
import { soundRows } from './sound-rows';
import { storeRecords } from './store-records';
import type { SetAside, Store, StoreChange, StoreHealth } from './store-type';
import { openTabChannel } from './tab-channel';

export type StoreOptions = {
  /** Milliseconds since 1970. */
  readonly now?: () => number;
  /** Asks the browser not to clear the data by itself; null where it cannot be asked. */
  readonly askToPersist?: () => Promise<boolean | null>;
  /** Opens the database, or throws why not. */
  readonly open?: (onSuperseded: () => void) => Promise<Backing>;
};

async function askBrowser(): Promise<boolean | null> {
  if (typeof navigator === 'undefined' || navigator.storage?.persist === undefined) return null;
  return navigator.storage.persist();
}

/** Records first written later come later; some thousand may share a millisecond. */
const ORDERS_PER_MS = 1000;

function clockFrom(now: () => number): () => Clock {
  return () => {
    const ms = now();
    return { order: ms * ORDERS_PER_MS, updatedAt: new Date(ms).toISOString() };
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
  const {
    now = Date.now,
    askToPersist = askBrowser,
    open = (onSuperseded) => openDatabase({ onSuperseded }),
  } = options;
  const { tell, subscribe } = openNews();
  let health: StoreHealth = { keeps: 'memory', because: 'failed', promised: null, setAside: [] };
  let asked = false;
  let closed = false;
  function setHealth(change: Partial<StoreHealth>): void {
    health = { ...health, ...change };
    tell({ kind: 'health', health });
  }
  const channel = openTabChannel(DATABASE_NAME, tell);
  const keeper = await openKeeper({ open, onState: setHealth });
  const readAsides = async (): Promise<void> => setHealth({ setAside: await keeper.asides() });
  await readAsides();
  const clock = clockFrom(now);
  async function ask(): Promise<void> {
    asked = true;
    setHealth({ promised: await askToPersist().catch(() => null) });
  }
  const records = storeRecords({
    rows: soundRows(keeper, clock, readAsides),
    isClosed: () => closed,
    onWritten: (change) => {
      tell(change);
      if (health.keeps === 'memory') return;
      const { origin: _, ...message } = change;
      channel.tell(message);
      if (!asked) void ask();
    },
  });
  return {
    ...records,
    subscribe,
    health: () => health,
    retry: async () => {
      if (health.keeps === 'memory' && (await keeper.retry())) {
        tell({ kind: 'everything', origin: 'this-tab' });
        channel.tell({ kind: 'everything' });
      }
      await readAsides();
      return health;
    },
    ...asidesOf(keeper, readAsides, () => health.setAside),
    close: () => {
      closed = true;
      channel.close();
      keeper.close();
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
