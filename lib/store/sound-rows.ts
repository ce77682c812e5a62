import { type Changes, keyOf, type Scope, type WriteDecision } from './backing';
import type { Keeper } from './keeper';
import { type Row, readRow } from './row';
import type { WriteStamp } from './rules';
import { type Sorted, sortOut } from './set-aside';

/** Rows that can be relied on: whoever reads or decides never meets a damaged one. */
export type SoundRows = {
  readonly read: (scope: Scope) => Promise<readonly Row[]>;
  readonly transact: <R>(
    scope: Scope,
    decide: (rows: readonly Row[], now: WriteStamp) => WriteDecision<R>,
  ) => Promise<R>;
};

function withEmptied(changes: Changes, { emptied, aside }: Sorted): Changes {
  const written = new Set(changes.rows.map(keyOf));
  return {
    rows: [...emptied.filter((row) => !written.has(keyOf(row))), ...changes.rows],
    aside: [...(changes.aside ?? []), ...aside],
  };
}

export function soundRows(
  keeper: Keeper,
  clock: () => WriteStamp,
  onSetAside: () => Promise<void>,
): SoundRows {
  const transact: SoundRows['transact'] = async (scope, decide) => {
    const { answer, setAside } = await keeper.transact(scope, (raws) => {
      const now = clock();
      const sorted = sortOut(raws, now);
      const decision = decide([...sorted.good, ...sorted.emptied], now);
      const changes = withEmptied(decision.changes, sorted);
      return {
        changes,
        answer: {
          answer: decision.answer,
          setAside: changes.aside !== undefined && changes.aside.length > 0,
        },
      };
    });
    if (setAside) await onSetAside();
    return answer;
  };
  return {
    transact,
    read: async (scope) => {
      const reads = (await keeper.read(scope)).map(readRow);
      // Only where one is damaged is anything written.
      if (reads.every(({ row }) => row !== null)) return reads.flatMap(({ row }) => row ?? []);
      return transact(scope, (rows) => ({ changes: { rows: [] }, answer: rows }));
    },
  };
}
