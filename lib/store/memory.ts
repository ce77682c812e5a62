import { type Backing, inScope, keyOf } from './backing';
import type { RawRow } from './row';
import type { SetAside } from './set-aside-record';

/** Rows in memory: for a browser without a database, and for tests. Gone with the page. */
export function memoryBacking(start: readonly RawRow[] = []): Backing {
  const rows = new Map(start.map((row) => [keyOf(row), row]));
  const aside = new Map<string, SetAside>();
  const inside = (scope: Parameters<Backing['read']>[0]): readonly RawRow[] =>
    [...rows.values()].filter((row) => inScope(scope, row));
  return {
    read: async (scope) => inside(scope),
    transact: async (scope, decide) => {
      const { changes, answer } = decide(inside(scope));
      // A copy, as a database makes one: nobody who holds the value can change what is stored.
      for (const row of changes.rows) rows.set(keyOf(row), structuredClone(row));
      for (const set of changes.aside ?? []) aside.set(set.key, set);
      return answer;
    },
    asides: async () => [...aside.values()],
    dropAside: async (key) => {
      aside.delete(key);
    },
    close: () => undefined,
  };
}
