import type { BoardNight } from '@/lib/contract/board';
import { deleteBoard, readBoard, writeBoard } from '@/lib/posted/board-rows';
import { countReached, deleteFollower, readDelivery } from '@/lib/posted/follower-rows';
import { giveBack, takeJob } from '@/lib/posted/job-rows';
import { hashOf } from '@/lib/posted/secrets';
import type { JobRow, PostedDb } from '@/lib/posted/tables';
import type { PushOutcome } from '@/lib/push/send-push';
import { addMinutes, type Instant, instant } from '@/lib/time/instant';
import { payloadOnClock } from '@/lib/words/board-clock';
import type { BoardDeps } from './board-deps';
import { replan } from './replan';

type Where = { readonly db: PostedDb; readonly deps: BoardDeps };

/** Faults of a board are told by the caller; the job is tried again, less and less often. */
export type JobFault = (error: unknown) => void;

/** Plans are made in threads; sending mostly waits, and one push service that does not answer must not keep the others waiting. */
const MOST_PLANNING = 2;
const MOST_SENDING = 8;

/** Does everything that is due, what comes of it included; other processes may take some of it. */
export async function runDue(where: Where, tell: JobFault): Promise<void> {
  const busy = new Set<Promise<void>>();
  const hands = (kinds: readonly JobRow['kind'][], most: number, then: () => void) => {
    let count = 0;
    const begin = (): void => {
      if (count >= most) return;
      count += 1;
      const work = workThrough(where, kinds, { tell, begin, then }).finally(() => {
        count -= 1;
        busy.delete(work);
      });
      busy.add(work);
    };
    return begin;
  };
  const send = hands(['send'], MOST_SENDING, () => undefined);
  const plan = hands(['plan', 'end'], MOST_PLANNING, send);
  send();
  plan();
  while (busy.size > 0) await Promise.all(busy);
}

type Hand = {
  readonly tell: JobFault;
  /** Where there is one job there may be another. */
  readonly begin: () => void;
  /** After each that was done. */
  readonly then: () => void;
};

async function workThrough(
  where: Where,
  kinds: readonly JobRow['kind'][],
  { tell, begin, then }: Hand,
): Promise<void> {
  const { db, deps } = where;
  for (;;) {
    const job = await takeJob(db, { now: deps.now(), by: deps.me, kinds });
    if (job === null) return;
    begin();
    try {
      await doJob(where, job);
    } catch (error) {
      tell(error);
      await giveBack(db, job, addMinutes(deps.now(), waitMinutes(job.tries)));
    }
    then();
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
  const { revision } = row;
  const planned = await replan(row, { night, revision, saidBy: null, caller: 'boards' }, deps);
  if (!planned.ok) throw new Error(`a posted night cannot be planned: ${planned.reason.status}`);
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
      payload: payloadOnClock(message.payload, follower.clock),
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
