import type { Result } from '@/lib/result/result';
import type { Stored, TableName, TableValue } from './records';
import type { RemovedRecord } from './removed-record';
import type { SetAside } from './set-aside-record';
import type { Trace } from './trace-schema';

/** Why a write did not happen. Nothing that was handed in or stored is lost in any of these. */
export type StoreProblem<T> =
  /**
   * Someone else (another tab) wrote, or removed, this record since it was read. `mine` is what was handed in, null
   * for a removal; `theirs` is what is stored now, null where it was removed there.
   */
  | { readonly code: 'conflict'; readonly mine: T | null; readonly theirs: Stored<T> | null }
  /** The value is not a record of its table; each issue names the field. */
  | { readonly code: 'invalid'; readonly issues: readonly StoreIssue[] }
  /** To be removed, but it was gone already. */
  | { readonly code: 'not-found' }
  /** The store was closed. */
  | { readonly code: 'closed' };

export type StoreIssue = { readonly path: string; readonly message: string };

/**
 * Why values are kept in memory only and are gone after a reload. `no-database`: private mode or a locked-down setting.
 * `blocked`: another tab holds an old version open. `full`: the disk quota is used up. `newer-app`: a newer version of
 * the app has used this database. `silent`: the database does not answer. `failed`: anything else.
 */
export type MemoryReason = 'no-database' | 'blocked' | 'full' | 'newer-app' | 'silent' | 'failed';

export type StoreHealth = {
  readonly keeps: 'disk' | 'memory';
  /** null where values are kept on disk. */
  readonly because: MemoryReason | null;
  /** True: the browser promised not to clear the data by itself. False: it did not. null: not known (yet). */
  readonly promised: boolean | null;
  readonly setAside: readonly SetAside[];
};

export type ChangeOrigin = 'this-tab' | 'other-tab';

/** What subscribers hear. `everything` follows an import, and the return to a page that was left: read all again. */
export type StoreChange =
  | {
      readonly kind: 'put' | 'removed';
      readonly table: TableName;
      readonly id: string;
      readonly revision: number;
      readonly origin: ChangeOrigin;
    }
  | { readonly kind: 'everything'; readonly origin: ChangeOrigin }
  | { readonly kind: 'health'; readonly health: StoreHealth };

/** Everything stored, table by table. */
export type SnapshotTables = { readonly [T in TableName]: readonly Stored<TableValue[T]>[] };

/** Everything stored, and what is known of records that were removed. */
export type Snapshot = SnapshotTables & { readonly removed: readonly RemovedRecord[] };

/** Values to stand in the tables, without revisions: the store gives each its own. */
export type SnapshotValues = {
  readonly [T in TableName]: readonly {
    readonly id: string;
    readonly value: TableValue[T];
    /** Kept where given, else the time of the write. */
    readonly updatedAt?: string;
    /** Where its fields come from; where it is not given, or stands already, the write itself leaves its mark. */
    readonly trace?: Trace;
  }[];
} & {
  /**
   * What is to be known of records that do not stand; of one that goes and is not named here, the write itself is the
   * removal. Without a `from` in its trace nothing is known of it, as if it had never been here.
   */
  readonly removed?: readonly RemovedRecord[];
  /** What is set aside with it, in the same write. */
  readonly setAside?: readonly SetAside[];
};

export type Rewritten = {
  readonly before: Snapshot;
  readonly after: Snapshot;
  readonly setAside: readonly SetAside[];
};

export type Written<T extends TableName> = Result<Stored<TableValue[T]>, StoreProblem<TableValue[T]>>;

export type Store = {
  /** All records of a table, oldest first. Damaged ones are left out and set aside. */
  list<T extends TableName>(table: T): Promise<readonly Stored<TableValue[T]>[]>;
  get<T extends TableName>(table: T, id: string): Promise<Stored<TableValue[T]> | null>;
  /**
   * Writes `value` if the stored revision still is `basedOn`; null means "there is none yet".
   * To overwrite after a conflict, put again based on the revision of `theirs` (null where it was removed).
   */
  put<T extends TableName>(
    table: T,
    id: string,
    value: TableValue[T],
    basedOn: number | null,
  ): Promise<Written<T>>;
  /** Removes and hands back what was removed, for `restore` (undo). */
  remove<T extends TableName>(table: T, id: string, basedOn: number): Promise<Written<T>>;
  /** Undoes a removal; a conflict where another record took its place meanwhile. */
  restore<T extends TableName>(table: T, removed: Stored<TableValue[T]>): Promise<Written<T>>;
  snapshot(): Promise<Snapshot>;
  /**
   * Changes many records at once or none: reads everything, asks `change` what should stand, writes that.
   * Hands back what stood before and after, for undo (`undoRewrite`).
   */
  rewrite(change: (current: Snapshot) => SnapshotValues): Promise<Result<Rewritten, StoreProblem<never>>>;
  /** Hears every change, also those of other tabs. Returns the way to stop listening. */
  subscribe(listener: (change: StoreChange) => void): () => void;
  health(): StoreHealth;
  /** After memory-only: tries the database again and writes what was kept meanwhile. */
  retry(): Promise<StoreHealth>;
  /** Forgets a record that was set aside, once the person has saved or read it. Hands it back for undo. */
  dropSetAside(key: string): Promise<SetAside | null>;
  returnSetAside(aside: SetAside): Promise<void>;
  close(): void;
};
