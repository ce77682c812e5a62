import { type Backing, keyOf } from './backing';
import { type RawRow, type Row, readRow, revisionOf } from './row';
import { sameValue } from './same-value';
import { asideOf } from './set-aside';

/** The revision each row had on disk when memory took over. */
export type Seed = ReadonlyMap<string, number>;

export function seedOf(rows: readonly RawRow[]): Seed {
  return new Map(rows.map((row) => [keyOf(row), revisionOf(row)]));
}

/** Writes one row that memory changed, unless another tab changed it on disk too: then that one stands. */
async function writeBack(disk: Backing, row: Row, was: number): Promise<void> {
  await disk.transact({ table: row.table, id: row.id }, ([raw]) => {
    const onDisk = raw === undefined ? null : readRow(raw).row;
    if (revisionOf(raw) === was) return { changes: { rows: [row] }, answer: null };
    const same = onDisk !== null && onDisk.removed === row.removed && sameValue(onDisk.value, row.value);
    const aside = same || row.removed ? [] : [asideOf(row, 'changed-twice', [])];
    return { changes: { rows: [], aside }, answer: null };
  });
}

/**
 * Brings what was written in memory to the disk, row by row. Stops where the disk fails; what is left differs from the
 * seed still and goes with the next try.
 */
export async function mergeBack({
  memory,
  disk,
  seed,
}: {
  readonly memory: Backing;
  readonly disk: Backing;
  readonly seed: Seed;
}): Promise<{ readonly seed: Seed; readonly failure: unknown }> {
  const done = new Map(seed);
  try {
    const aside = await memory.asides();
    // With nothing to bring, the disk is not asked to write: it would lock out every other tab meanwhile.
    if (aside.length > 0) await disk.transact('all', () => ({ changes: { rows: [], aside }, answer: null }));
    for (const raw of await memory.read('all')) {
      const { row } = readRow(raw);
      const was = seed.get(keyOf(raw)) ?? 0;
      if (row === null || row.revision === was) continue;
      await writeBack(disk, row, was);
      done.set(keyOf(raw), row.revision);
    }
    return { seed: done, failure: null };
  } catch (failure) {
    return { seed: done, failure };
  }
}
