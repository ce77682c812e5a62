import { tellDone } from '@/app/api/_boards/change-board';
import { enter } from '@/app/api/_boards/door';
import { type BoardContext, MOST_SMALL_BYTES } from '@/app/api/_boards/params';
import { answer } from '@/app/api/_boards/read-board';
import { serverBoards } from '@/app/api/_boards/server-boards';
import { handle, refusedBut } from '@/app/api/_http/handle';
import { readJsonBody } from '@/app/api/_http/read-json-body';
import { ok } from '@/lib/result/result';

export function POST(request: Request, { params }: BoardContext): Promise<Response> {
  return handle(request, async () => {
    const deps = serverBoards();
    const inside = await enter(request, (await params).id, deps);
    if (!inside.ok) return inside;
    const json = await readJsonBody(request, MOST_SMALL_BYTES);
    if (!json.ok) return json;
    const told = await tellDone(inside.value, deps, json.value);
    return told.ok ? ok(answer(told.value.row.body, told.value.row.etag)) : told;
  });
}

export const { DELETE, GET, OPTIONS, PATCH, PUT } = refusedBut('POST');
