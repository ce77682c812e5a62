import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type DatabasePlace, openPosted } from '@/lib/posted/open-database';
import type { PostedDb } from '@/lib/posted/tables';
import { HAS_POSTGRES, type Postgres, startPostgres } from './postgres';

/** One engine, started once for a file of tests; `fresh` empties it. */
export type Engine = {
  readonly name: 'file' | 'postgres';
  readonly start: () => Promise<void>;
  readonly stop: () => Promise<void>;
  /** A database with nothing in it, and where it is. */
  readonly fresh: () => Promise<{ readonly db: PostedDb; readonly place: DatabasePlace }>;
};

const TABLES = ['job', 'message', 'follower', 'board', 'setting'] as const;

function fileEngine(): Engine {
  const folders: string[] = [];
  const open: PostedDb[] = [];
  return {
    name: 'file',
    start: () => Promise.resolve(),
    stop: async () => {
      for (const db of open) await db.destroy();
      for (const folder of folders) rmSync(folder, { recursive: true, force: true });
    },
    fresh: async () => {
      const folder = mkdtempSync(join(tmpdir(), 'heavy-air-boards-'));
      folders.push(folder);
      const place = { engine: 'file', folder } as const;
      const db = await openPosted(place);
      open.push(db);
      return { db, place };
    },
  };
}

function postgresEngine(): Engine {
  let server: Postgres | null = null;
  const open: PostedDb[] = [];
  return {
    name: 'postgres',
    start: async () => {
      server = await startPostgres();
    },
    stop: async () => {
      for (const db of open) await db.destroy();
      await server?.stop();
    },
    fresh: async () => {
      const place = { engine: 'postgres', address: server!.address } as const;
      const db = await openPosted(place);
      for (const table of TABLES) await db.deleteFrom(table).execute();
      open.push(db);
      return { db, place };
    },
  };
}

/** The same tests run on all of these; PostgreSQL where it is installed. */
export const engines = (): readonly Engine[] =>
  HAS_POSTGRES ? [fileEngine(), postgresEngine()] : [fileEngine()];
