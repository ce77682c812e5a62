import { callerOf } from '@/app/api/_http/caller-of';
import type { Problem } from '@/app/api/_http/problem';
import { createTokenBuckets } from '@/app/api/_http/token-bucket';
import { type BoardDoor, readDoor } from '@/lib/posted/board-rows';
import { hashOf, isSecretOf } from '@/lib/posted/secrets';
import type { PostedDb } from '@/lib/posted/tables';
import { fail, ok, type Result } from '@/lib/result/result';
import type { BoardDeps } from './board-deps';

export type Inside = {
  readonly db: PostedDb;
  readonly door: BoardDoor;
  readonly role: 'keeper' | 'follower';
  readonly caller: string;
};

/** Wrong secrets at once, and then a minute, of one caller; a slip costs one, a search is over at once. */
const WRONG = { burst: 20, perSecond: 1 / 6 };

type Buckets = ReturnType<typeof createTokenBuckets>;
const shared = globalThis as typeof globalThis & { heavyAirWrongSecrets?: Buckets };

const NO_BOARD: Problem = {
  status: 404,
  detail:
    'There is no such board, or this is not its secret. It may have been taken down, or its night is over.',
};

/** Who was let in may find the board gone a moment later. */
export const TAKEN_DOWN: Problem = { status: 404, detail: 'This board has just been taken down.' };

/** Lets in whoever holds one of a board's two secrets. A board that is not there answers as one that stays shut. */
export async function enter(request: Request, id: string, deps: BoardDeps): Promise<Result<Inside, Problem>> {
  const secret = /^Bearer ([\w-]{1,64})$/i.exec(request.headers.get('authorization') ?? '')?.[1];
  if (secret === undefined)
    return fail({
      status: 401,
      detail: 'Send the secret of this board, with authorization: Bearer.',
      headers: { 'www-authenticate': 'Bearer' },
    });
  const db = await deps.dbIfAny();
  const door = db === null ? null : await readDoor(db, id);
  const keeps = isSecretOf(secret, door?.keep_hash ?? hashOf(''));
  const follows = isSecretOf(secret, door?.follow_hash ?? hashOf(''));
  if (db !== null && door !== null && (keeps || follows))
    return ok({ db, door, role: keeps ? 'keeper' : 'follower', caller: callerOf(request) });
  return fail(wrongSecret(request, deps));
}

function wrongSecret(request: Request, deps: BoardDeps): Problem {
  shared.heavyAirWrongSecrets ??= createTokenBuckets(WRONG);
  const wait = shared.heavyAirWrongSecrets.take(callerOf(request), deps.now());
  if (wait === null) return NO_BOARD;
  return {
    status: 429,
    detail: `Too many wrong secrets. Wait ${wait} s and ask again.`,
    headers: { 'retry-after': String(wait) },
  };
}

/** The same for what only the keeper may do. */
export async function enterAsKeeper(
  request: Request,
  id: string,
  deps: BoardDeps,
): Promise<Result<Inside, Problem>> {
  const inside = await enter(request, id, deps);
  if (!inside.ok || inside.value.role === 'keeper') return inside;
  return fail({ status: 403, detail: "Only the keeper's secret changes a board or takes it down." });
}
