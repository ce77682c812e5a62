import * as z from 'zod/mini';
import { fail, ok, type Result } from '@/lib/result/result';
import { crc32 } from './crc32';
import { MIGRATIONS, type Migration, migrateValue, newestVersion } from './migrations';
import { TABLE_SCHEMA, TABLES, type TableName, type TableValue } from './records';
import { removalTravels } from './removal';
import { type RemovedRecord, removedRecordSchema } from './removed-record';
import { idSchema, issuesOf } from './row';
import { type SetAside, setAsideSchema } from './set-aside-record';
import type { Snapshot, SnapshotTables, StoreIssue } from './store-type';
import { NO_TRACE, type Trace, traceSchema } from './trace-schema';

export type BackupEntry<T extends TableName> = {
  readonly id: string;
  readonly updatedAt: string;
  readonly value: TableValue[T];
  /** Empty in files of before traces were kept. */
  readonly trace: Trace;
};

/** A backup file that was read and found whole. */
export type Backup = {
  readonly madeAt: string;
  readonly tables: { readonly [T in TableName]: readonly BackupEntry<T>[] };
  /** None in files of before removals were kept. */
  readonly removed: readonly RemovedRecord[];
  readonly setAside: readonly SetAside[];
};

/** Why a file cannot be imported. Nothing stored is touched in any of these. */
export type BackupProblem =
  | { readonly code: 'too-large'; readonly limit: number }
  | { readonly code: 'not-json' }
  /** JSON, but no backup of this app. */
  | { readonly code: 'foreign' }
  | { readonly code: 'newer-format'; readonly format: number; readonly newest: number }
  /** A backup that is not as it was written: a byte changed, a line cut off, a number edited by hand. */
  | { readonly code: 'damaged'; readonly what: 'checksum' | 'shape' | 'counts' }
  | {
      readonly code: 'bad-record';
      readonly table: string;
      readonly id: string;
      readonly issues: readonly StoreIssue[];
    };

const APP = 'heavy-air';

/** Some thousand nights fit; a longer file is not read into memory. */
export const MOST_BACKUP_CHARACTERS = 20_000_000;

const UNSEALED = '00000000';
const SEAL = /"checksum": "([0-9a-f]{8})"\n\}\n?$/;

/**
 * Writes the checksum into a file that ends with eight zeros for it: CRC-32 of the whole text, the zeros included. It
 * covers every byte, its own digits too, and a CRC-32 misses no error shorter than 33 bits.
 */
export function sealBackup(text: string): string {
  const sum = crc32(new TextEncoder().encode(text)).toString(16).padStart(8, '0');
  return text.replace(SEAL, (ending) => ending.replace(UNSEALED, sum));
}

function isWhole(text: string): boolean {
  const seal = SEAL.exec(text)?.[1];
  if (seal === undefined) return false;
  const ended = text.endsWith('\n') ? text : `${text}\n`;
  return sealBackup(ended.replace(SEAL, (ending) => ending.replace(seal, UNSEALED))) === ended;
}

/** Plain JSON in ASCII: what a mail program or an old editor does to other letters cannot hurt it. */
export function writeBackup(
  snapshot: SnapshotTables & Partial<Snapshot>,
  madeAt: string,
  setAside: readonly SetAside[] = [],
): string {
  const tables = Object.fromEntries(
    TABLES.map((table) => [
      table,
      snapshot[table].map(({ id, updatedAt, value, trace }) => ({ id, updatedAt, value, trace })),
    ]),
  );
  const counts = Object.fromEntries(TABLES.map((table) => [table, snapshot[table].length]));
  const { removed = [] } = snapshot;
  const file = {
    app: APP,
    format: newestVersion(),
    madeAt,
    counts,
    tables,
    removed,
    setAside,
    checksum: UNSEALED,
  };
  const ascii = JSON.stringify(file, null, 1).replace(
    /[\u007f-\uffff]/g,
    (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
  return sealBackup(`${ascii}\n`);
}

const headSchema = z.looseObject({ app: z.literal(APP), format: z.int().check(z.minimum(1)) });

const fileSchema = z.strictObject({
  app: z.literal(APP),
  format: z.int().check(z.minimum(1)),
  madeAt: z.iso.datetime(),
  counts: z.record(z.string(), z.int().check(z.minimum(0))),
  tables: z.record(
    z.string(),
    z.array(
      z.strictObject({
        id: idSchema,
        updatedAt: z.iso.datetime(),
        value: z.unknown(),
        trace: z.optional(traceSchema),
      }),
    ),
  ),
  removed: z._default(z.array(removedRecordSchema), []),
  setAside: z._default(z.array(setAsideSchema), []),
  checksum: z.string(),
});

type File = z.output<typeof fileSchema>;

function parseJson(text: string): Result<unknown, BackupProblem> {
  try {
    return ok(JSON.parse(text));
  } catch {
    return fail(text.includes(`"app": "${APP}"`) ? { code: 'damaged', what: 'shape' } : { code: 'not-json' });
  }
}

function parseFile(data: unknown, text: string, newest: number): Result<File, BackupProblem> {
  const head = headSchema.safeParse(data);
  if (!head.success) return fail({ code: 'foreign' });
  if (head.data.format > newest) return fail({ code: 'newer-format', format: head.data.format, newest });
  if (!isWhole(text)) return fail({ code: 'damaged', what: 'checksum' });
  const file = fileSchema.safeParse(data);
  return file.success ? ok(file.data) : fail({ code: 'damaged', what: 'shape' });
}

function isComplete({ tables, counts }: File): boolean {
  const names = Object.keys(tables);
  return (
    names.every((name) => Object.hasOwn(TABLE_SCHEMA, name)) &&
    names.length === Object.keys(counts).length &&
    names.every((name) => counts[name] === tables[name]?.length) &&
    names.every((name) => new Set(tables[name]?.map(({ id }) => id)).size === tables[name]?.length)
  );
}

function readEntries<T extends TableName>(
  table: T,
  file: File,
  migrations: readonly Migration[],
): Result<readonly BackupEntry<T>[], BackupProblem> {
  const entries: BackupEntry<T>[] = [];
  for (const { id, updatedAt, value, trace = NO_TRACE } of file.tables[table] ?? []) {
    const parsed = TABLE_SCHEMA[table].safeParse(migrateValue({ table, value }, file.format, migrations));
    if (!parsed.success) return fail({ code: 'bad-record', table, id, issues: issuesOf(parsed.error) });
    // Parsed by the schema of this very table.
    entries.push({ id, updatedAt, value: parsed.data as TableValue[T], trace });
  }
  return ok(entries);
}

/** Reads a backup file of this or an older format, or says why it cannot be used. */
export function readBackup(
  file: string,
  migrations: readonly Migration[] = MIGRATIONS,
): Result<Backup, BackupProblem> {
  if (file.length > MOST_BACKUP_CHARACTERS) return fail({ code: 'too-large', limit: MOST_BACKUP_CHARACTERS });
  const text = file.replace(/^\uFEFF/, '').replace(/\r\n/g, '\n');
  const data = parseJson(text);
  if (!data.ok) return data;
  const parsed = parseFile(data.value, text, newestVersion(migrations));
  if (!parsed.ok) return parsed;
  if (!isComplete(parsed.value)) return fail({ code: 'damaged', what: 'counts' });
  const tables: Partial<Record<TableName, unknown>> = {};
  for (const table of TABLES) {
    const entries = readEntries(table, parsed.value, migrations);
    if (!entries.ok) return entries;
    tables[table] = entries.value;
  }
  // Every table was read above by its own schema.
  const { madeAt, setAside } = parsed.value;
  return ok({ madeAt, tables: tables as Backup['tables'], removed: removedIn(parsed.value), setAside });
}

/** What the file knows of removed records: of tables that there are, and of records that do not stand in it. */
function removedIn({ tables, removed }: File): readonly RemovedRecord[] {
  return removed.filter(
    (each): each is RemovedRecord =>
      TABLES.some((table) => table === each.table && removalTravels(table)) &&
      !tables[each.table]?.some(({ id }) => id === each.id),
  );
}
