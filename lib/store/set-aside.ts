import { keyOf } from './backing';
import { TABLE_SCHEMA, type TableName } from './records';
import { type RawRow, type Row, readRow, revisionOf } from './row';
import { emptied, type WriteStamp } from './rules';
import type { SetAside } from './set-aside-record';

/** A record as text for a person to save; the key holds table, id and revision, so nothing is set aside twice. */
export function asideOf(raw: RawRow, why: SetAside['why'], issues: SetAside['issues']): SetAside {
  return {
    key: `${keyOf(raw)}/${revisionOf(raw)}/${why}`,
    why,
    table: raw.table,
    id: raw.id,
    text: JSON.stringify('value' in raw ? raw.value : raw, null, 1) ?? 'null',
    issues,
  };
}

export type Sorted = {
  readonly good: readonly Row[];
  /** The places of damaged rows, to be written without a value. */
  readonly emptied: readonly Row[];
  readonly aside: readonly SetAside[];
};

const isTable = (name: string): name is TableName => Object.hasOwn(TABLE_SCHEMA, name);

/** Parts damaged rows from good ones. Their text goes aside, so that nothing is lost and nothing else is harmed. */
export function sortOut(raws: readonly RawRow[], clock: WriteStamp): Sorted {
  const good: Row[] = [];
  const places: Row[] = [];
  const aside: SetAside[] = [];
  for (const raw of raws) {
    const read = readRow(raw);
    if (read.row !== null) good.push(read.row);
    else {
      aside.push(asideOf(raw, 'damaged', read.issues));
      const { table, id } = raw;
      const { order, updatedAt } = clock;
      const place = { id, order, updatedAt, revision: revisionOf(raw), removed: false, value: null };
      if (isTable(table)) places.push(emptied({ table, ...place }, clock));
    }
  }
  return { good, emptied: places, aside };
}
