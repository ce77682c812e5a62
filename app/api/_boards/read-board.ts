import type { Problem } from '@/app/api/_http/problem';
import { entryId } from '@/lib/board/board-requests';
import type { BoardNight } from '@/lib/contract/board';
import type { BoardAnswer } from '@/lib/contract/board-answer';
import { readBoard, readMessages } from '@/lib/posted/board-rows';
import { readFollowers } from '@/lib/posted/follower-rows';
import type { BoardRow, PostedDb } from '@/lib/posted/tables';
import { fail, ok, type Result } from '@/lib/result/result';
import { instant } from '@/lib/time/instant';
import { isoLocal } from '@/lib/time/zone';
import { type Inside, TAKEN_DOWN } from './door';
import { boardTag } from './replan';

/** More of what was told than anybody reads back through. */
const MOST_TOLD = 200;

/** A look at a board; nothing but a nod for whoever has it already. */
export async function readAnswer(
  { db, door, role }: Inside,
  ifNoneMatch: string | null,
): Promise<Result<Response, Problem>> {
  if (role === 'follower' && knows(ifNoneMatch, door.etag)) return ok(answer(null, door.etag));
  const row = await readBoard(db, door.id);
  if (row === null) return fail(TAKEN_DOWN);
  if (role === 'follower') return ok(answer(row.body, row.etag));
  return ok(await keeperAnswer(db, row, ifNoneMatch));
}

/** What the keeper sees beside: who follows, what was told, and the night itself. */
export async function keeperAnswer(
  db: PostedDb,
  row: BoardRow,
  ifNoneMatch: string | null,
): Promise<Response> {
  const night: BoardNight = JSON.parse(row.night);
  const board: BoardAnswer = JSON.parse(row.body);
  const followers = (await readFollowers(db, row.id)).map(({ machines }): readonly unknown[] =>
    JSON.parse(machines),
  );
  const told = await readMessages(db, row.id, MOST_TOLD);
  const body = JSON.stringify({
    ...board,
    keeper: {
      followers: night.machines.map((entry, i) => {
        const machine = entryId(entry, i);
        return { machine, phones: followers.filter((machines) => machines.includes(machine)).length };
      }),
      told: told.map(({ at, machine, title, body: text, phones, reached }) => ({
        at: isoLocal(instant(at), night.event.timezone),
        machine,
        title,
        body: text,
        phones,
        reached,
      })),
    },
    night,
  } satisfies BoardAnswer);
  const etag = boardTag(row.revision, body);
  return knows(ifNoneMatch, etag) ? answer(null, etag) : answer(body, etag);
}

/** A board as its answer: kept by the one who asked, and asked for again each time. */
export function answer(body: string | null, etag: string): Response {
  const headers = { etag, 'cache-control': 'private, no-cache', vary: 'authorization' };
  return body === null
    ? new Response(null, { status: 304, headers })
    : new Response(body, { headers: { ...headers, 'content-type': 'application/json' } });
}

function knows(ifNoneMatch: string | null, etag: string): boolean {
  return (ifNoneMatch ?? '').split(',').some((one) => one.trim().replace(/^W\//, '') === etag);
}
