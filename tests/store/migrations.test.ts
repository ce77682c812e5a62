import { existsSync, readFileSync } from 'node:fs';
import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { type Backup, readBackup, writeBackup } from '@/lib/store/backup-file';
import { openDatabase } from '@/lib/store/database';
import { DATABASE_NAME } from '@/lib/store/database-name';
import { MIGRATIONS, type Migration, migrateValue, newestVersion } from '@/lib/store/migrations';
import { TABLES } from '@/lib/store/records';
import type { Snapshot } from '@/lib/store/store-type';
import { NO_TRACE } from '@/lib/store/trace-schema';
import { box, closeTabs, freshBrowser, openTab } from './tabs';
import { trailer } from './trailer';

beforeEach(freshBrowser);
afterEach(closeTabs);

const VERSIONS = Array.from({ length: newestVersion() }, (_, i) => i + 1);

/** The backup file that the app wrote when this version was new. Never rewritten once it is in people's hands. */
const golden = (version: number): string =>
  readFileSync(`tests/fixtures/store/backup-v${version}.json`, 'utf8');

function withoutRevisions(snapshot: Snapshot): Backup['tables'] {
  const entries = TABLES.map((table) => [
    table,
    snapshot[table].map(({ revision: _, ...entry }) => ({ trace: NO_TRACE, ...entry })),
  ]);
  return Object.fromEntries(entries) as Backup['tables'];
}

/** Puts the records of a golden file into a database of its version, as that app would have. */
async function databaseOf(version: number): Promise<void> {
  const disk = await openDatabase({ migrations: MIGRATIONS.slice(0, version) });
  const { tables } = JSON.parse(golden(version)) as {
    tables: Record<string, { id: string; updatedAt: string; value: unknown }[]>;
  };
  const rows = TABLES.flatMap((table) =>
    (tables[table] ?? []).map((entry, order) => ({ table, order, revision: 3, removed: false, ...entry })),
  );
  await disk.transact('all', () => ({ changes: { rows }, answer: null }));
  disk.close();
}

describe('every format there ever was', () => {
  it('has its golden file', () => {
    expect(VERSIONS.filter((version) => !existsSync(`tests/fixtures/store/backup-v${version}.json`))).toEqual(
      [],
    );
  });

  it.each(VERSIONS)(
    'version %i is read from its file and from a database, to the same records',
    async (version) => {
      const file = expectOk(readBackup(golden(version)));
      await databaseOf(version);
      const store = await openTab();
      expect(withoutRevisions(await store.snapshot())).toEqual(file.tables);
      expect(store.health()).toMatchObject({ keeps: 'disk', setAside: [] });
      expect(TABLES.every((table) => file.tables[table].length > 0)).toBe(true);
    },
  );

  it.each(VERSIONS)('version %i says what the newest says', (version) => {
    const newest = expectOk(readBackup(golden(newestVersion())));
    const values = ({ tables }: Backup) =>
      TABLES.map((table) => tables[table].map(({ trace: _, ...entry }) => entry));
    expect(values(expectOk(readBackup(golden(version))))).toEqual(values(newest));
  });

  it('what was removed is known from version 4 on', () => {
    const ofVersions = VERSIONS.map((version) => expectOk(readBackup(golden(version))).removed);
    const { removed } = trailer();
    expect(ofVersions).toEqual(VERSIONS.map((version) => (version < 4 ? [] : removed)));
  });

  it('the newest is written today as it was written then', async () => {
    const store = await openTab();
    await store.rewrite(trailer);
    const { setAside } = store.health();
    expect(writeBackup(await store.snapshot(), '2027-01-15T18:00:00.000Z', setAside)).toBe(
      golden(newestVersion()),
    );
  });
});

describe('steps between formats', () => {
  const named = (value: unknown): Record<string, unknown> => ({ ...(value as Record<string, unknown>) });
  const now = newestVersion();
  /** Today's steps, and two that may come. */
  const steps: readonly Migration[] = [
    ...MIGRATIONS,
    {
      version: now + 1,
      value: (table, value) =>
        table === 'boxes' ? { ...named(value), name: `${named(value).name} 2` } : value,
    },
    {
      version: now + 2,
      value: (table, value) =>
        table === 'boxes' ? { ...named(value), name: `${named(value).name} 3` } : value,
    },
  ];

  it('are taken one after the other, from the format of the record on', () => {
    const record = { table: 'boxes', value: { name: 'spares', entries: [] } };
    expect([now, now + 1, now + 2].map((from) => migrateValue(record, from, steps))).toEqual([
      { name: 'spares 2 3', entries: [] },
      { name: 'spares 3', entries: [] },
      { name: 'spares', entries: [] },
    ]);
    expect(record.value.name).toBe('spares');
  });

  it('must follow each other without a hole', () => {
    expect(newestVersion(steps)).toBe(now + 2);
    expect(() => newestVersion([...MIGRATIONS, steps[now + 1]!])).toThrow(
      `migration ${now + 2} stands in place ${now + 1}`,
    );
  });

  it('bring a database up to date when it is opened, removed records and all', async () => {
    const old = await openTab();
    await old.put('boxes', 'b', box('spares', 400), null);
    await old.put('boxes', 'gone', box('gone', 400), null);
    await old.remove('boxes', 'gone', 1);
    old.close();
    const store = await openTab({
      open: (onSuperseded) => openDatabase({ migrations: steps, onSuperseded }),
    });
    expect(
      (await store.list('boxes')).map(({ value, revision }) => `${value.name}, revision ${revision}`),
    ).toEqual(['spares 2 3, revision 1']);
    store.close();
    expect((await openDB(DATABASE_NAME)).version).toBe(now + 2);
  });

  it('leave a record they cannot read for the person to see', async () => {
    const old = await openTab();
    await old.put('boxes', 'b', box('spares', 400), null);
    old.close();
    const fails: Migration = {
      version: now + 1,
      value: () => {
        throw new Error('not what I expected');
      },
    };
    const store = await openTab({
      open: (onSuperseded) => openDatabase({ migrations: [...MIGRATIONS, fails], onSuperseded }),
    });
    expect((await store.get('boxes', 'b'))?.value.name).toBe('spares');
  });

  it('bring an older backup file up to date too', () => {
    const file = expectOk(readBackup(golden(1), steps));
    expect(file.tables.boxes.map(({ value }) => value.name)).toEqual(['Anhänger 2 3']);
  });
});
