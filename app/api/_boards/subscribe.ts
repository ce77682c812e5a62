import { fieldsProblem, type Problem } from '@/app/api/_http/problem';
import { entryId } from '@/lib/board/board-requests';
import { type BoardNight, boardSubscriptionSchema, boardUnsubscribeSchema } from '@/lib/contract/board';
import { parseWith } from '@/lib/contract/parse';
import { readBoard } from '@/lib/posted/board-rows';
import { deleteFollower, putFollower, readFollowers } from '@/lib/posted/follower-rows';
import { hashOf } from '@/lib/posted/secrets';
import { serviceOf } from '@/lib/push/services';
import { fail, ok, type Result } from '@/lib/result/result';
import { METRIC_UNITS } from '@/lib/units/choice';
import type { BoardDeps } from './board-deps';
import { noMachine } from './change-board';
import { type Inside, TAKEN_DOWN } from './door';

const VOICE = { zone: 'UTC', units: METRIC_UNITS };
/** Phones of one board. */
const MOST_FOLLOWERS = 1000;

const done = (): Response => new Response(null, { status: 204, headers: { 'cache-control': 'no-store' } });

/** A phone wants to hear of some machines. */
export async function subscribe(
  { db, door }: Inside,
  deps: BoardDeps,
  json: unknown,
): Promise<Result<Response, Problem>> {
  const asked = parseWith(boardSubscriptionSchema, json);
  if (!asked.ok) return fail(fieldsProblem(asked.reason, VOICE));
  const { subscription, machines, clock } = asked.value;
  const { endpoint, keys } = subscription;
  if (serviceOf(endpoint, deps.ownServices()) === null)
    return fail({
      status: 422,
      detail:
        'This server sends to the push services of known browsers only, and subscription.endpoint is none of them.',
    });
  const row = await readBoard(db, door.id);
  if (row === null) return fail(TAKEN_DOWN);
  const night: BoardNight = JSON.parse(row.night);
  const known = new Set(night.machines.map(entryId));
  const strange = machines.find((id) => !known.has(id));
  if (strange !== undefined) return fail(noMachine(strange));
  const id = hashOf(endpoint);
  const followers = await readFollowers(db, door.id);
  if (followers.length >= MOST_FOLLOWERS && !followers.some((each) => each.id === id))
    return fail({ status: 422, detail: `At most ${MOST_FOLLOWERS} phones follow one board.` });
  const put = await putFollower(db, {
    board_id: door.id,
    id,
    endpoint,
    p256dh: keys.p256dh,
    auth: keys.auth,
    machines: JSON.stringify([...new Set(machines)]),
    clock,
    created_at: deps.now(),
  });
  return put ? ok(done()) : fail(TAKEN_DOWN);
}

/** A phone wants to hear no more. */
export async function unsubscribe({ db, door }: Inside, json: unknown): Promise<Result<Response, Problem>> {
  const asked = parseWith(boardUnsubscribeSchema, json);
  if (!asked.ok) return fail(fieldsProblem(asked.reason, VOICE));
  await deleteFollower(db, { board_id: door.id, id: hashOf(asked.value.endpoint) });
  return ok(done());
}
