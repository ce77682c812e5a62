import type { RawRow, Row } from './row';
import type { SetAside } from './set-aside-record';

/** Everything, one table, or one record. */
export type Scope = 'all' | { readonly table: string; readonly id?: string };

export type Changes = {
  readonly rows: readonly Row[];
  readonly aside?: readonly SetAside[];
};

export type WriteDecision<R> = { readonly changes: Changes; readonly answer: R };

/** Where rows lie: a disk or memory. Knows nothing of revisions; the rules decide, it writes. */
export type Backing = {
  read(scope: Scope): Promise<readonly RawRow[]>;
  /** Reads, decides and writes in one go: nobody else writes in between, and all changes are made or none. */
  transact<R>(scope: Scope, decide: (rows: readonly RawRow[]) => WriteDecision<R>): Promise<R>;
  asides(): Promise<readonly SetAside[]>;
  dropAside(key: string): Promise<void>;
  close(): void;
};

export const keyOf = ({ table, id }: RawRow): string => `${table}/${id}`;

export function inScope(scope: Scope, row: RawRow): boolean {
  return scope === 'all' || (row.table === scope.table && (scope.id === undefined || row.id === scope.id));
}
