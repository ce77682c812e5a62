import { type Backing, keyOf, type Scope, type WriteDecision } from './backing';
import { reasonOf } from './database-unusable';
import { memoryBacking } from './memory';
import { mergeBack, type Seed, seedOf } from './merge-back';
import type { RawRow } from './row';
import type { SetAside } from './set-aside-record';
import type { MemoryReason } from './store-type';

export type KeeperState = { readonly keeps: 'disk' | 'memory'; readonly because: MemoryReason | null };

/** A backing that never fails: where the disk does, work goes on in memory with everything last seen. */
export type Keeper = {
  read(scope: Scope): Promise<readonly RawRow[]>;
  transact<R>(scope: Scope, decide: (rows: readonly RawRow[]) => WriteDecision<R>): Promise<R>;
  asides(): Promise<readonly SetAside[]>;
  dropAside(key: string): Promise<void>;
  state(): KeeperState;
  /** Opens the disk again and writes what memory has kept; true where values are on disk now. */
  retry(): Promise<boolean>;
  close(): void;
};

export type KeeperOptions = {
  /** Opens the database or throws. `onSuperseded` is called when a newer app takes the database over. */
  readonly open: (onSuperseded: () => void) => Promise<Backing>;
  readonly onState: (state: KeeperState) => void;
};

type Guarded<R> = { readonly answer: R } | { readonly threw: unknown };

/** A decision that throws is the caller's fault, not the disk's: nothing is written, and the caller gets it back. */
function guarded<R>(
  decide: (rows: readonly RawRow[]) => WriteDecision<R>,
  rows: readonly RawRow[],
): WriteDecision<Guarded<R>> {
  try {
    const { changes, answer } = decide(rows);
    return { changes, answer: { answer } };
  } catch (threw) {
    return { changes: { rows: [] }, answer: { threw } };
  }
}

type Work<R> = (backing: Backing) => Promise<R>;

/** What the keeper holds at the moment; everything that changes it goes through the queue. */
type Hold = {
  readonly options: KeeperOptions;
  backing: Backing;
  state: KeeperState;
  /** What the disk held when memory took over, to tell what was changed since. */
  seed: Seed;
  /** Rows last seen on disk, for the case that it cannot even be read any more. */
  readonly seen: Map<string, RawRow>;
  readonly openDisk: () => Promise<Backing>;
};

function setState(hold: Hold, state: KeeperState): void {
  hold.state = state;
  hold.options.onState(state);
}

function see(hold: Hold, rows: readonly RawRow[]): void {
  for (const row of rows) hold.seen.set(keyOf(row), row);
}

async function toMemory(hold: Hold, because: MemoryReason): Promise<void> {
  if (hold.state.keeps === 'disk') {
    const rows = await hold.backing.read('all').catch(() => [...hold.seen.values()]);
    const aside = await hold.backing.asides().catch(() => []);
    hold.backing.close();
    hold.backing = memoryBacking(rows);
    hold.seed = seedOf(rows);
    await hold.backing.transact('all', () => ({ changes: { rows: [], aside }, answer: null }));
  }
  setState(hold, { keeps: 'memory', because });
}

/** Opens the disk once more: phones cut connections of pages in the background. */
async function again<R>(hold: Hold, work: Work<R>): Promise<R> {
  hold.backing.close();
  hold.backing = await hold.openDisk();
  return work(hold.backing);
}

/** Does the work on disk; where that fails, in memory with everything that was there. */
async function onDisk<R>(hold: Hold, work: Work<R>): Promise<R> {
  let failure: unknown;
  try {
    return await work(hold.backing);
  } catch (error) {
    failure = error;
  }
  if (reasonOf(failure) === 'failed')
    try {
      return await again(hold, work);
    } catch (error) {
      failure = error;
    }
  await toMemory(hold, reasonOf(failure));
  return work(hold.backing);
}

async function toDisk(hold: Hold): Promise<boolean> {
  if (hold.state.keeps === 'disk') return true;
  try {
    const disk = await hold.openDisk();
    const merged = await mergeBack({ memory: hold.backing, disk, seed: hold.seed });
    hold.seed = merged.seed;
    if (merged.failure !== null) {
      disk.close();
      throw merged.failure;
    }
    see(hold, await disk.read('all'));
    hold.backing = disk;
    setState(hold, { keeps: 'disk', because: null });
    return true;
  } catch (error) {
    setState(hold, { keeps: 'memory', because: reasonOf(error) });
    return false;
  }
}

/** One after the other: work never meets a backing that is being exchanged. */
function openQueue(): <R>(work: () => Promise<R>) => Promise<R> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const turn = last.then(work);
    last = turn.catch(() => undefined);
    return turn;
  };
}

export async function openKeeper(options: KeeperOptions): Promise<Keeper> {
  const queued = openQueue();
  const hold: Hold = {
    options,
    backing: memoryBacking(),
    state: { keeps: 'memory', because: 'failed' },
    seed: new Map(),
    seen: new Map(),
    openDisk: () => options.open(() => void queued(() => toMemory(hold, 'newer-app'))),
  };
  const run = <R>(work: Work<R>): Promise<R> =>
    queued(() => (hold.state.keeps === 'disk' ? onDisk(hold, work) : work(hold.backing)));
  await queued(() => toDisk(hold));
  return {
    read: async (scope) => {
      const rows = await run((backing) => backing.read(scope));
      see(hold, rows);
      return rows;
    },
    transact: async (scope, decide) => {
      const { done, rows } = await run((backing) =>
        backing.transact(scope, (raws) => {
          const { changes, answer } = guarded(decide, raws);
          return { changes, answer: { done: answer, rows: changes.rows } };
        }),
      );
      see(hold, rows);
      if ('threw' in done) throw done.threw;
      return done.answer;
    },
    asides: () => run((backing) => backing.asides()),
    dropAside: (key) => run((backing) => backing.dropAside(key)),
    state: () => hold.state,
    retry: () => queued(() => toDisk(hold)),
    close: () =>
      void queued(async () => {
        hold.backing.close();
        hold.backing = memoryBacking();
        hold.state = { keeps: 'memory', because: null };
      }),
  };
}
