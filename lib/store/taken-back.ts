import { leavesOf, valueOfLeaves } from './leaves';
import { TABLE_SCHEMA, type TableName, type TableValue } from './records';
import type { SetAside } from './set-aside-record';
import type { Snapshot, SnapshotValues } from './store-type';

/** What stands once something set aside is taken back in the place of what stands now; null where it does not fit. */
export function withTakenBack(current: Snapshot, aside: SetAside): SnapshotValues | null {
  const { table, id, path = '', text } = aside;
  if (!isTable(table)) return null;
  const here = current[table].find((entry) => entry.id === id);
  const value = parsedText(text);
  if (path !== '' && here === undefined) return null;
  const leaves = new Map(here === undefined ? [] : leavesOf(table, here.value));
  const wanted = path === '' ? value : valueOfLeaves(table, leaves.set(path, value));
  const record = TABLE_SCHEMA[table].safeParse(wanted);
  if (!record.success) return null;
  // Parsed by the schema of this very table.
  const entry = { id, value: record.data as TableValue[TableName] };
  const others = current[table].filter((each) => each.id !== id);
  return { ...current, [table]: [...others, entry] } as SnapshotValues;
}

const isTable = (name: string): name is TableName => Object.hasOwn(TABLE_SCHEMA, name);

function parsedText(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
