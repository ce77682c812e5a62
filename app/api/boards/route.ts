import { MOST_NIGHT_BYTES } from '@/app/api/_boards/params';
import { postBoard } from '@/app/api/_boards/post-board';
import { postingWait } from '@/app/api/_boards/posting-wait';
import { serverBoards } from '@/app/api/_boards/server-boards';
import { callerOf } from '@/app/api/_http/caller-of';
import { handle, refusedBut } from '@/app/api/_http/handle';
import { readJsonBody } from '@/app/api/_http/read-json-body';
import { fail } from '@/lib/result/result';

export function POST(request: Request): Promise<Response> {
  return handle(request, async () => {
    const deps = serverBoards();
    const wait = postingWait(request, deps.now());
    if (wait !== null) return fail(wait);
    const json = await readJsonBody(request, MOST_NIGHT_BYTES);
    return json.ok ? postBoard(json.value, deps, callerOf(request)) : json;
  });
}

export const { DELETE, GET, OPTIONS, PATCH, PUT } = refusedBut('POST');
