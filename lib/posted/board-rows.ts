import { SqliteAdapter, sql } from 'kysely';
import type { Instant } from '@/lib/time/instant';
import { endJob, planJob, sendJob, setDue } from './job-rows';
import type { BoardRow, MessageRow, PostedDb } from './tables';

/** A board just posted, and when it is to be planned next. */
export async function insertBoard(db: PostedDb, board: BoardRow, look: Instant | null): Promise<void> {
  await db.transaction().execute(async (all) => {
    await all.insertInto('board').values(board).execute();
    await setDue(all, planJob(board.id, look));
    await setDue(all, endJob(board.id, board.expires_at as Instant));
  });
}

export async function readBoard(db: PostedDb, id: string): Promise<BoardRow | null> {
  return (await db.selectFrom('board').selectAll().where('id', '=', id).executeTakeFirst()) ?? null;
}

/** What it takes to let somebody in and to say that nothing has changed. */
export type BoardDoor = Pick<BoardRow, 'id' | 'keep_hash' | 'follow_hash' | 'etag'>;

export async function readDoor(db: PostedDb, id: string): Promise<BoardDoor | null> {
  const row = await db
    .selectFrom('board')
    .select(['id', 'keep_hash', 'follow_hash', 'etag'])
    .where('id', '=', id)
    .executeTakeFirst();
  return row ?? null;
}

export async function countBoards(db: PostedDb): Promise<number> {
  const row = await db
    .selectFrom('board')
    .select((each) => each.fn.countAll().as('boards'))
    .executeTakeFirst();
  return Number(row?.boards ?? 0);
}

export type BoardChange = Partial<Omit<BoardRow, 'id' | 'version'>>;
export type NewMessage = Omit<MessageRow, 'board_id' | 'phones' | 'reached'>;

type Written = {
  readonly change: BoardChange;
  readonly messages: readonly NewMessage[];
  readonly look: Instant | null;
  readonly now: Instant;
};

/**
 * Writes a planning over the version it was made from: the board, what is to be told, to whom, and when to look again,
 * all or nothing. False where somebody else has written since.
 */
export function writeBoard(
  db: PostedDb,
  { id, version }: Pick<BoardRow, 'id' | 'version'>,
  { change, messages, look, now }: Written,
): Promise<boolean> {
  return db.transaction().execute(async (all) => {
    const { numUpdatedRows } = await all
      .updateTable('board')
      .set({ ...change, version: version + 1 })
      .where('id', '=', id)
      .where('version', '=', version)
      .executeTakeFirst();
    if (numUpdatedRows === 0n) return false;
    await addMessages(all, id, messages, now);
    await setDue(all, planJob(id, look));
    if (change.expires_at !== undefined) await setDue(all, endJob(id, change.expires_at as Instant));
    return true;
  });
}

async function addMessages(
  db: PostedDb,
  boardId: string,
  messages: readonly NewMessage[],
  now: Instant,
): Promise<void> {
  if (messages.length === 0) return;
  const followers = await db
    .selectFrom('follower')
    .select(['id', 'machines'])
    .where('board_id', '=', boardId)
    .execute();
  for (const message of messages) {
    const of = followers.filter(({ machines }) =>
      (JSON.parse(machines) as unknown[]).includes(message.machine),
    );
    const added = await db
      .insertInto('message')
      .values({ ...message, board_id: boardId, phones: of.length, reached: 0 })
      .onConflict((at) => at.doNothing())
      .executeTakeFirst();
    if ((added.numInsertedOrUpdatedRows ?? 0n) === 0n) continue;
    for (const { id } of of) {
      const send = { board_id: boardId, machine: message.machine, message_key: message.key, follower_id: id };
      await db
        .insertInto('job')
        .values(sendJob(send, now))
        .onConflict((at) => at.doNothing())
        .execute();
    }
  }
}

/** Everything of a board; from the file's log of changes too. */
export async function deleteBoard(db: PostedDb, id: string): Promise<void> {
  await db.transaction().execute(async (all) => {
    // The board's own row first, as whoever plans it does: two that took the same rows in other orders would each wait
    // for the other.
    await all.deleteFrom('board').where('id', '=', id).execute();
    for (const table of ['job', 'message', 'follower'] as const)
      await all.deleteFrom(table).where('board_id', '=', id).execute();
  });
  if (db.getExecutor().adapter instanceof SqliteAdapter)
    await sql`PRAGMA wal_checkpoint(TRUNCATE)`.execute(db);
}

/** What was told of a board, newest first. */
export function readMessages(db: PostedDb, boardId: string, most: number): Promise<MessageRow[]> {
  return db
    .selectFrom('message')
    .selectAll()
    .where('board_id', '=', boardId)
    .orderBy('at', 'desc')
    .orderBy('machine')
    .limit(most)
    .execute();
}
