import { type Instant, instant } from '@/lib/time/instant';
import type { JobRow, PostedDb } from './tables';

/** Whoever takes a job has it for this long; then it is taken for dead and another may. */
const LEASE_MS = 120_000;
/** How often somebody else may be quicker before we look again later. */
const MOST_RACES = 20;

const NO_JOB = { lease_until: 0, lease_by: '', tries: 0, machine: '', message_key: '', follower_id: '' };

export const planJob = (boardId: string, dueAt: Instant | null): JobRow => ({
  ...NO_JOB,
  id: `plan:${boardId}`,
  board_id: boardId,
  kind: 'plan',
  due_at: dueAt,
});

export const endJob = (boardId: string, dueAt: Instant): JobRow => ({
  ...NO_JOB,
  id: `end:${boardId}`,
  board_id: boardId,
  kind: 'end',
  due_at: dueAt,
});

type Send = Pick<JobRow, 'board_id' | 'machine' | 'message_key' | 'follower_id'>;

export const sendJob = (send: Send, dueAt: Instant): JobRow => ({
  ...NO_JOB,
  ...send,
  id: ['send', send.board_id, send.machine, send.message_key, send.follower_id].join(':'),
  kind: 'send',
  due_at: dueAt,
});

/** Sets when a job is due, whoever holds it; a job that is not there yet comes to be. */
export async function setDue(db: PostedDb, job: JobRow): Promise<void> {
  await db
    .insertInto('job')
    .values(job)
    .onConflict((at) => at.column('id').doUpdateSet({ due_at: job.due_at, tries: 0, lease_until: 0 }))
    .execute();
}

type Taker = { readonly now: Instant; readonly by: string; readonly kinds: readonly JobRow['kind'][] };

/**
 * Takes the job that has been due longest and nobody holds, in one atomic update; null where there is none. The row is
 * judged again when it is written, so two that want the same one do not both get it.
 */
export async function takeJob(db: PostedDb, { now, by, kinds }: Taker): Promise<JobRow | null> {
  for (let race = 0; race < MOST_RACES; race += 1) {
    const first = db
      .selectFrom('job')
      .select('id')
      .where('due_at', '<=', now)
      .where('lease_until', '<=', now)
      .where('kind', 'in', kinds)
      .orderBy('due_at')
      .orderBy('id')
      .limit(1);
    const taken = await db
      .updateTable('job')
      .set((each) => ({ lease_until: now + LEASE_MS, lease_by: by, tries: each('tries', '+', 1) }))
      .where('id', '=', first)
      .where('due_at', '<=', now)
      .where('lease_until', '<=', now)
      .returningAll()
      .executeTakeFirst();
    if (taken !== undefined) return taken;
    if ((await first.executeTakeFirst()) === undefined) return null;
  }
  return null;
}

/** Gives a job back: done (null), or due again. Nothing where the lease was lost or the job was set anew meanwhile. */
export async function giveBack(db: PostedDb, job: JobRow, dueAt: Instant | null): Promise<void> {
  await db
    .updateTable('job')
    .set({ due_at: dueAt, lease_until: 0, lease_by: '' })
    .where('id', '=', job.id)
    .where('lease_by', '=', job.lease_by)
    .where('lease_until', '=', job.lease_until)
    .execute();
}

/** When there is next something to do, leases counted in; null where there is nothing. */
export async function nextDue(db: PostedDb): Promise<Instant | null> {
  const row = await db
    .selectFrom('job')
    .select(['due_at', 'lease_until'])
    .where('due_at', 'is not', null)
    .orderBy((each) =>
      each
        .case()
        .when('due_at', '>', each.ref('lease_until'))
        .then(each.ref('due_at'))
        .else(each.ref('lease_until'))
        .end(),
    )
    .limit(1)
    .executeTakeFirst();
  return row === undefined || row.due_at === null ? null : instant(Math.max(row.due_at, row.lease_until));
}
