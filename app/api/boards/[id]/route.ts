import { patchBoard } from '@/app/api/_boards/change-board';
import { enter, enterAsKeeper } from '@/app/api/_boards/door';
import { type BoardContext, MOST_NIGHT_BYTES } from '@/app/api/_boards/params';
import { keeperAnswer, readAnswer } from '@/app/api/_boards/read-board';
import { serverBoards } from '@/app/api/_boards/server-boards';
import { handle, refusedBut } from '@/app/api/_http/handle';
import { readJsonBody } from '@/app/api/_http/read-json-body';
import { deleteBoard } from '@/lib/posted/board-rows';
import { ok } from '@/lib/result/result';

export function GET(request: Request, { params }: BoardContext): Promise<Response> {
  return handle(request, async () => {
    const inside = await enter(request, (await params).id, serverBoards());
    return inside.ok ? readAnswer(inside.value, request.headers.get('if-none-match')) : inside;
  });
}

export function PATCH(request: Request, { params }: BoardContext): Promise<Response> {
  return handle(request, async () => {
    const deps = serverBoards();
    const inside = await enterAsKeeper(request, (await params).id, deps);
    if (!inside.ok) return inside;
    const json = await readJsonBody(request, MOST_NIGHT_BYTES);
    if (!json.ok) return json;
    const ifMatch = request.headers.get('if-match');
    const changed = await patchBoard(inside.value, deps, { json: json.value, ifMatch });
    return changed.ok ? ok(await keeperAnswer(inside.value.db, changed.value.row, null)) : changed;
  });
}

export function DELETE(request: Request, { params }: BoardContext): Promise<Response> {
  return handle(request, async () => {
    const inside = await enterAsKeeper(request, (await params).id, serverBoards());
    if (!inside.ok) return inside;
    await deleteBoard(inside.value.db, inside.value.door.id);
    return ok(new Response(null, { status: 204, headers: { 'cache-control': 'no-store' } }));
  });
}

export const { OPTIONS, POST, PUT } = refusedBut('GET', 'PATCH', 'DELETE');
