import { enter } from '@/app/api/_boards/door';
import { type BoardContext, MOST_SMALL_BYTES } from '@/app/api/_boards/params';
import { serverBoards } from '@/app/api/_boards/server-boards';
import { subscribe, unsubscribe } from '@/app/api/_boards/subscribe';
import { handle, refusedBut } from '@/app/api/_http/handle';
import { readJsonBody } from '@/app/api/_http/read-json-body';

export function PUT(request: Request, { params }: BoardContext): Promise<Response> {
  return handle(request, async () => {
    const deps = serverBoards();
    const inside = await enter(request, (await params).id, deps);
    if (!inside.ok) return inside;
    const json = await readJsonBody(request, MOST_SMALL_BYTES);
    return json.ok ? subscribe(inside.value, deps, json.value) : json;
  });
}

export function DELETE(request: Request, { params }: BoardContext): Promise<Response> {
  return handle(request, async () => {
    const inside = await enter(request, (await params).id, serverBoards());
    if (!inside.ok) return inside;
    const json = await readJsonBody(request, MOST_SMALL_BYTES);
    return json.ok ? unsubscribe(inside.value, json.value) : json;
  });
}

export const { GET, OPTIONS, PATCH, POST } = refusedBut('PUT', 'DELETE');
