import type { IncomingMessage, ServerResponse } from 'node:http';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import { wantsCoding } from './accept-encoding';

/** A route that our server answers by its own handler, past the framework, whose way to it takes a millisecond. */
export type StraightRoute = {
  readonly method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  /** As it is asked for, without its query; a group is the route's `id`. Anything else goes to the framework. */
  readonly path: RegExp;
  readonly answer: (
    request: Request,
    context: { readonly params: Promise<{ readonly id: string }> },
  ) => Response | Promise<Response>;
};

const packed = promisify(gzip);
/** Less than this fits a packet as it is. */
const LEAST_PACKED_BYTES = 1024;

type Exchange = { readonly request: IncomingMessage; readonly response: ServerResponse };

/** Answers a request by the handler of its route; null where it is none of these. */
export function answerStraight(
  routes: readonly StraightRoute[],
  path: string,
  { request, response }: Exchange,
): Promise<void> | null {
  for (const route of routes) {
    const found = route.method === request.method ? route.path.exec(path) : null;
    if (found !== null) return answer(route, found[1] ?? '', { request, response });
  }
  return null;
}

async function answer(route: StraightRoute, id: string, { request, response }: Exchange): Promise<void> {
  const answered = await route.answer(webRequest(request), { params: Promise.resolve({ id }) });
  for (const [name, value] of answered.headers) response.setHeader(name, value);
  response.statusCode = answered.status;
  // What was not read is let go, so that the connection can be used again.
  if (!request.complete) request.resume();
  if (answered.body === null) response.end();
  else await sendText(await answered.text(), { request, response });
}

/** All of these answer with text, which goes out with its head in one piece; packed where that saves a packet. */
async function sendText(text: string, { request, response }: Exchange): Promise<void> {
  response.appendHeader('vary', 'accept-encoding');
  const bytes = Buffer.byteLength(text);
  if (bytes < LEAST_PACKED_BYTES || !wantsCoding(String(request.headers['accept-encoding'] ?? ''), 'gzip')) {
    response.setHeader('content-length', bytes);
    response.end(text);
    return;
  }
  const body = await packed(text);
  response.setHeader('content-encoding', 'gzip');
  response.setHeader('content-length', body.length);
  response.end(body);
}

function webRequest(request: IncomingMessage): Request {
  const headers = new Headers();
  for (const [name, value] of Object.entries(request.headers))
    if (value !== undefined) headers.set(name, String(value));
  const method = request.method ?? 'GET';
  const init =
    method === 'GET'
      ? { method, headers }
      : { method, headers, body: bodyOf(request), duplex: 'half' as const };
  // Nobody asks which server it came to.
  return new Request(`http://localhost${request.url}`, init);
}

/** The body as it is asked for; whoever wants no more of it leaves the connection open for the answer. */
function bodyOf(request: IncomingMessage): ReadableStream<Uint8Array> {
  const parts = request.iterator({ destroyOnReturn: false });
  return new ReadableStream<Uint8Array>(
    {
      pull: async (into) => {
        const { done, value } = await parts.next();
        if (done === true) into.close();
        else into.enqueue(value);
      },
      cancel: async () => {
        await parts.return?.();
      },
    },
    { highWaterMark: 0 },
  );
}
