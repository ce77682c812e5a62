import type { BoardNight } from '@/lib/contract/board';
import { deleteBoard, readBoard, writeBoard } from '@/lib/posted/board-rows';
import { countReached, deleteFollower, readDelivery } from '@/lib/posted/follower-rows';
import { giveBack, takeJob } from '@/lib/posted/job-rows';
import { hashOf } from '@/lib/posted/secrets';
import type { JobRow, PostedDb } from '@/lib/posted/tables';
import type { PushOutcome } from '@/lib/push/send-push';
import { addMinutes, type Instant, instant } from '@/lib/time/instant';
import type { BoardDeps } from './board-deps';
import { replan } from './replan';

type Where = { readonly db: PostedDb; readonly deps: BoardDeps };

/** Faults of a board are told by the caller; the job is tried again, less and less often. */
export type JobFault = (error: unknown) => void;

/** Does everything that is due, one job after another; other processes may take some of it. */
export async function runDue(where: Where, tell: JobFault): Promise<void> {
  const { db, deps } = where;
  for (;;) {
    const job = await takeJob(db, { now: deps.now(), by: deps.me });
    if (job === null) return;
    try {
      await doJob(where, job);
    } catch (error) {
      tell(error);
      await giveBack(db, job, addMinutes(deps.now(), waitMinutes(job.tries)));
    }
  }
}

function doJob(where: Where, job: JobRow): Promise<void> {
  switch (job.kind) {
    case 'plan':
      return planAgain(where, job);
    case 'send':
      return sendOne(where, job);
    case 'end':
      return end(where, job);
  }
}

async function planAgain({ db, deps }: Where, job: JobRow): Promise<void> {
  const row = await readBoard(db, job.board_id);
  if (row === null) return giveBack(db, job, null);
  const night: BoardNight = JSON.parse(row.night);
  const pushKey = (await deps.pushKeys(db)).publicKey;
  const planned = await replan(row, { night, revision: row.revision, saidBy: null, pushKey }, deps);
  if (!planned.ok)
    throw new Error(`a posted night can no longer be planned: ${planned.reason[0]?.reason.code}`);
  const written = await writeBoard(db, row, { ...planned.value, now: deps.now() });
  // Somebody changed the board meanwhile and planned it themselves.
  if (!written) await giveBack(db, job, deps.now());
}

async function end({ db, deps }: Where, job: JobRow): Promise<void> {
  const row = await readBoard(db, job.board_id);
  if (row !== null && row.expires_at > deps.now()) return giveBack(db, job, instant(row.expires_at));
  await deleteBoard(db, job.board_id);
}

async function sendOne({ db, deps }: Where, job: JobRow): Promise<void> {
  const delivery = await readDelivery(db, job);
  const now = deps.now();
  if (delivery === null || delivery.message.until <= now) return giveBack(db, job, null);
  const { follower, message } = delivery;
  const outcome = await deps.send(
    {
      endpoint: follower.endpoint,
      p256dh: follower.p256dh,
      auth: follower.auth,
      payload: message.payload,
      ttl: Math.ceil((message.until - now) / 1000),
      topic: hashOf(`${message.board_id}|${message.machine}`).slice(0, MOST_TOPIC),
    },
    await deps.pushKeys(db),
  );
  if (outcome.kind === 'gone')
    return void (await deleteFollower(db, { board_id: job.board_id, id: follower.id }));
  if (outcome.kind === 'taken') await countReached(db, message);
  await giveBack(db, job, againAt(outcome, { job, now, until: message.until }));
}

/** A topic may be this long (RFC 8030, section 5.4, from memory). */
const MOST_TOPIC = 32;

type Sent = { readonly job: JobRow; readonly now: Instant; readonly until: number };

/** When to try again; null where it is done, or would come too late. */
function againAt(outcome: PushOutcome, { job, now, until }: Sent): Instant | null {
  if (outcome.kind !== 'later') return null;
  const wait = Math.max(outcome.retryAfterSeconds ?? 0, 60 * waitMinutes(job.tries));
  const at = instant(now + 1000 * wait);
  return at < until ? at : null;
}

const MOST_WAIT_MINUTES = 16;

/** Half a minute, then twice as long each time. */
function waitMinutes(tries: number): number {
  return Math.min(MOST_WAIT_MINUTES, 2 ** (Math.min(tries, 10) - 2));
}
