import type { FollowerRow, MessageRow, PostedDb } from './tables';

/**
 * A phone that asks again has its machines and its clock changed. False where the board has gone: its row is held until
 * the phone's is in, so that a board that is taken down at that moment leaves no phone behind.
 */
export function putFollower(db: PostedDb, follower: FollowerRow): Promise<boolean> {
  const { board_id, p256dh, auth, machines, clock } = follower;
  return db.transaction().execute(async (all) => {
    const { numUpdatedRows } = await all
      .updateTable('board')
      .set((each) => ({ version: each.ref('version') }))
      .where('id', '=', board_id)
      .executeTakeFirst();
    if (numUpdatedRows === 0n) return false;
    await all
      .insertInto('follower')
      .values(follower)
      .onConflict((at) => at.columns(['board_id', 'id']).doUpdateSet({ p256dh, auth, machines, clock }))
      .execute();
    return true;
  });
}

type Who = Pick<FollowerRow, 'board_id' | 'id'>;

/** A phone that is gone, or wants to hear no more; what was still to be sent to it goes with it. */
export async function deleteFollower(db: PostedDb, { board_id, id }: Who): Promise<boolean> {
  await db.deleteFrom('job').where('board_id', '=', board_id).where('follower_id', '=', id).execute();
  const { numDeletedRows } = await db
    .deleteFrom('follower')
    .where('board_id', '=', board_id)
    .where('id', '=', id)
    .executeTakeFirst();
  return numDeletedRows > 0n;
}

export function readFollowers(
  db: PostedDb,
  boardId: string,
): Promise<Pick<FollowerRow, 'id' | 'machines'>[]> {
  return db.selectFrom('follower').select(['id', 'machines']).where('board_id', '=', boardId).execute();
}

export type Delivery = { readonly follower: FollowerRow; readonly message: MessageRow };

/** What a send job is about; null where the phone or the board has gone. */
export async function readDelivery(
  db: PostedDb,
  job: {
    readonly board_id: string;
    readonly machine: string;
    readonly message_key: string;
    readonly follower_id: string;
  },
): Promise<Delivery | null> {
  const follower = await db
    .selectFrom('follower')
    .selectAll()
    .where('board_id', '=', job.board_id)
    .where('id', '=', job.follower_id)
    .executeTakeFirst();
  const message = await db
    .selectFrom('message')
    .selectAll()
    .where('board_id', '=', job.board_id)
    .where('machine', '=', job.machine)
    .where('key', '=', job.message_key)
    .executeTakeFirst();
  return follower === undefined || message === undefined ? null : { follower, message };
}

/** One more push service has taken a message. */
export async function countReached(db: PostedDb, { board_id, machine, key }: MessageRow): Promise<void> {
  await db
    .updateTable('message')
    .set((each) => ({ reached: each('reached', '+', 1) }))
    .where('board_id', '=', board_id)
    .where('machine', '=', machine)
    .where('key', '=', key)
    .execute();
}
