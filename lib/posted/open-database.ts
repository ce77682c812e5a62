import { chmodSync, existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { Kysely, Migrator, PostgresDialect, type SqliteDatabase, SqliteDialect } from 'kysely';
import Libsql from 'libsql';
import { Pool } from 'pg';
import { POSTED_MIGRATIONS } from './migrations';
import type { PostedDb, Tables } from './tables';

/** Where boards are kept: in a file of a folder, or in PostgreSQL at an address. */
export type DatabasePlace =
  | { readonly engine: 'file'; readonly folder: string }
  | { readonly engine: 'postgres'; readonly address: string };

type Environment = Readonly<Record<string, string | undefined>>;

/** `DATABASE_URL` names a PostgreSQL; otherwise a file in `DATA_DIR`, which is `.data` where the server was started. */
export function databasePlace(environment: Environment, workingFolder: string): DatabasePlace {
  const address = environment.DATABASE_URL?.trim() ?? '';
  if (address !== '') return { engine: 'postgres', address };
  const folder = environment.DATA_DIR?.trim() ?? '';
  return { engine: 'file', folder: folder === '' ? join(workingFolder, '.data') : folder };
}

const fileIn = (folder: string): string => join(folder, 'boards.db');

/** False where nothing was ever posted here, so that there is nothing to open. */
export function mayHoldBoards(place: DatabasePlace): boolean {
  return place.engine === 'postgres' || existsSync(fileIn(place.folder));
}

/** Opens the database, making it where it is not there, and brings its tables up to date. */
export async function openPosted(place: DatabasePlace): Promise<PostedDb> {
  const db = new Kysely<Tables>({
    dialect: place.engine === 'file' ? fileDialect(place.folder) : postgresDialect(place.address),
  });
  const provider = { getMigrations: () => Promise.resolve({ ...POSTED_MIGRATIONS }) };
  const { error } = await new Migrator({ db, provider }).migrateToLatest();
  if (error === undefined) return db;
  await db.destroy();
  throw error;
}

function fileDialect(folder: string): SqliteDialect {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const file = new Libsql(fileIn(folder));
  chmodSync(fileIn(folder), 0o600);
  file.exec('PRAGMA journal_mode = WAL');
  file.exec('PRAGMA synchronous = FULL');
  file.exec('PRAGMA busy_timeout = 5000');
  // What is deleted is overwritten, not only left out of the index.
  file.exec('PRAGMA secure_delete = ON');
  return new SqliteDialect({ database: rememberingStatements(file) });
}

/** The same few questions are asked all the time, so each is read once. None has a value in its text: there are few. */
function rememberingStatements(file: Libsql.Database): SqliteDatabase {
  const known = new Map<string, Libsql.Statement>();
  return {
    prepare: (text) => {
      const statement = known.get(text) ?? file.prepare(text);
      known.set(text, statement);
      return statement;
    },
    close: () => file.close(),
  };
}

/** Few connections: every question is small. */
const MOST_CONNECTIONS = 8;

function postgresDialect(address: string): PostgresDialect {
  const pool = new Pool({ connectionString: address, max: MOST_CONNECTIONS });
  // A connection that breaks while it waits is opened again at the next question, which then tells what is wrong.
  pool.on('error', () => undefined);
  return new PostgresDialect({ pool });
}
