import { fieldsProblem, type Problem } from '@/app/api/_http/problem';
import { boardStarts } from '@/lib/board/starts';
import { boardPostSchema } from '@/lib/contract/board';
import { parseWith } from '@/lib/contract/parse';
import { countBoards, insertBoard } from '@/lib/posted/board-rows';
import { hashOf, newBoardId, newSecret } from '@/lib/posted/secrets';
import { fail, ok, type Result } from '@/lib/result/result';
import { isoUtc } from '@/lib/time/zone';
import { METRIC_UNITS } from '@/lib/units/choice';
import type { BoardDeps } from './board-deps';
import { replan } from './replan';

/** More boards than one server is asked to watch; the next one is refused, not the ones that stand. */
const MOST_BOARDS = 5000;

/** Posts a night: plans it, keeps it, and hands out its two secrets, this once. */
export async function postBoard(
  json: unknown,
  deps: BoardDeps,
  caller: string,
): Promise<Result<Response, Problem>> {
  const night = parseWith(boardPostSchema, json);
  if (!night.ok) return fail(fieldsProblem(night.reason, { zone: 'UTC', units: METRIC_UNITS }));
  const db = await deps.db();
  if ((await countBoards(db)) >= MOST_BOARDS)
    return fail({
      status: 503,
      detail: 'This server keeps as many boards as it can. Try again tomorrow.',
      headers: { 'retry-after': '3600' },
    });
  const [id, keepSecret, followSecret] = [newBoardId(), newSecret(), newSecret()];
  const now = deps.now();
  const empty = {
    id,
    memory: '{}',
    series: '',
    first_starts: JSON.stringify(boardStarts(night.value)),
    revision: 1,
    posted_at: now,
  };
  const planned = await replan(empty, { night: night.value, revision: 1, saidBy: null, caller }, deps);
  if (!planned.ok) return planned;
  if (planned.value.lasting !== null) return fail(planned.value.lasting);
  const { change, look } = planned.value;
  const secrets = { keep_hash: hashOf(keepSecret), follow_hash: hashOf(followSecret) };
  const row = {
    ...empty,
    ...secrets,
    night: JSON.stringify(night.value),
    planned_at: now,
    ...change,
    version: 1,
  };
  await insertBoard(db, row, look);
  deps.wake();
  const expiresAt = isoUtc(change.expires_at as typeof now);
  return ok(
    Response.json(
      { id, keepSecret, followSecret, expiresAt, revision: 1 },
      { status: 201, headers: { 'cache-control': 'no-store', location: `/api/boards/${id}` } },
    ),
  );
}
