import type { Backing } from './backing';
import { type ConnectOptions, connect, type Holding } from './connect';
import type { Connection } from './connection';
import { DatabaseUnusable } from './database-unusable';
import { diskBacking } from './disk-backing';
import { inTimeOrThrow } from './in-time';
import type { Presence } from './presence';

/** A phone at its slowest reads everything in less; nobody waits longer before words that say what is wrong. */
const PATIENCE_MS = 5000;

export type DatabaseOptions = ConnectOptions & {
  /** The page whose leaving ends all work at once; what was under way then fails. */
  readonly presence?: Presence;
  /** How long the browser may take to answer. */
  readonly patienceMs?: number;
};

function letGo(holding: Holding): void {
  holding.connection?.letGo();
  if (holding.connection !== null) return;
  try {
    holding.upgrade?.abort();
  } catch {
    // It was through a moment before.
  }
}

/** Waits for the browser's answers, but not for ever. */
function inTimeBacking(disk: Backing, patienceMs: number, late: () => never): Backing {
  return {
    read: (scope) => inTimeOrThrow(disk.read(scope), patienceMs, late),
    transact: (scope, decide) => inTimeOrThrow(disk.transact(scope, decide), patienceMs, late),
    asides: () => inTimeOrThrow(disk.asides(), patienceMs, late),
    dropAside: (key) => inTimeOrThrow(disk.dropAside(key), patienceMs, late),
    close: disk.close,
  };
}

/** Opens the database on disk, brings old records up to date, or throws DatabaseUnusable. */
export async function openDatabase(options: DatabaseOptions = {}): Promise<Backing> {
  const { presence, patienceMs = PATIENCE_MS } = options;
  if (typeof indexedDB === 'undefined' || indexedDB === null) throw new DatabaseUnusable('no-database');
  const holding: Holding = { upgrade: null, updated: null, connection: null, given: false };
  // A page kept for Back with a transaction under way locks the database for every other page (WebKit).
  const stopLooking = presence?.onLeave(() => letGo(holding));
  const silent = (): never => {
    holding.given = true;
    letGo(holding);
    throw new DatabaseUnusable('silent');
  };
  let connection: Connection;
  let before = holding.updated;
  try {
    // One that brings its records up to date answers with each of them, however long all of them take.
    connection = await inTimeOrThrow(connect(holding, options), patienceMs, () => {
      if (holding.updated === before) silent();
      before = holding.updated;
    });
  } catch (error) {
    stopLooking?.();
    throw error;
  }
  const disk = inTimeBacking(diskBacking(connection), patienceMs, silent);
  return {
    ...disk,
    close: () => {
      stopLooking?.();
      disk.close();
    },
  };
}
