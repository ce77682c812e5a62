import { readdirSync } from 'node:fs';
import { Agent, request as ask, createServer, type IncomingHttpHeaders } from 'node:http';
import type { AddressInfo } from 'node:net';
import { basename, dirname, join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterEach, describe, expect, it } from 'vitest';
import { readJsonBody } from '@/app/api/_http/read-json-body';
import { answering } from '@/app/api/_serve/answering';
import { CALLER_HEADER } from '@/app/api/_serve/served-process';
import { readServeSettings } from '@/app/api/_serve/settings';
import type { StraightRoute } from '@/app/api/_serve/straight';
import { STRAIGHT_ROUTES } from '@/app/api/_serve/straight-routes';
import type { Served } from '@/app/api/_serve/watch';
import { NIGHT } from '@/tests/api/night';
import { ROOT } from '@/tests/support/source-tree';

const stops: (() => void)[] = [];
afterEach(() => {
  for (const stop of stops.splice(0)) stop();
});

type Told = { status: number; headers: IncomingHttpHeaders; bytes: Buffer; text: string };
type More = { method?: string; headers?: Record<string, string>; body?: string };

/** A server whose framework answers 299, so that it is seen who answered; one connection for all that is asked. */
async function serving(straight: readonly StraightRoute[]) {
  const served: Served[] = [];
  const faults: unknown[] = [];
  const server = createServer(
    answering({
      settings: readServeSettings({}),
      routeOf: () => '/api/x',
      compressed: new Map(),
      watch: { served: (one) => served.push(one), upstreamFailed: () => {}, planned: () => {} },
      seconds: () => 0,
      fail: (thrown) => faults.push(thrown),
      straight: () => straight,
      answer: async (_, response) => void response.writeHead(299).end(),
    }),
  );
  let connections = 0;
  server.on('connection', () => {
    connections += 1;
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const agent = new Agent({ keepAlive: true, maxSockets: 1 });
  stops.push(() => {
    agent.destroy();
    server.close();
  });
  const { port } = server.address() as AddressInfo;
  const get = (path: string, { method = 'GET', headers = {}, body }: More = {}) =>
    new Promise<Told>((resolve, reject) => {
      ask({ host: '127.0.0.1', port, path, method, headers, agent }, (answered) => {
        const parts: Buffer[] = [];
        answered.on('data', (part) => parts.push(part));
        answered.on('end', () => {
          const bytes = Buffer.concat(parts);
          const { headers: told, statusCode: status = 0 } = answered;
          resolve({ status, headers: told, bytes, text: bytes.toString('utf8') });
        });
      })
        .on('error', reject)
        .end(body);
    });
  return { get, served, faults, connections: () => connections };
}

const route = (answer: StraightRoute['answer'], method: StraightRoute['method'] = 'GET'): StraightRoute => ({
  method,
  path: /^\/api\/x\/([\w-]+)$/,
  answer,
});
const LONG = JSON.stringify({ words: 'colder '.repeat(400) });

const folder = join(ROOT, 'app', 'api', 'boards', '[id]');
const OF_A_BOARD = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((file) => basename(file) === 'route.ts')
  .map((file) => join('[id]', dirname(file)));

describe('a route that our server answers itself', () => {
  it('is called as the framework calls it, and nothing but its very address and method is', async () => {
    const seen: string[] = [];
    const { get, served } = await serving([
      route(async ({ url, method, headers }, { params }) => {
        const { id } = await params;
        seen.push(`${method} ${new URL(url).pathname}${new URL(url).search} ${id} ${headers.get('x-own')}`);
        return new Response(null, { status: 304, headers: { etag: '"1"' } });
      }),
    ]);
    const straight = await get('/api/x/a-1?q=2', { headers: { 'x-own': 'mine' } });
    expect([straight.status, straight.headers.etag, straight.text]).toEqual([304, '"1"', '']);
    for (const path of ['/api/x/a-1/', '/api/x/a%2D1', '/api/x/', '/api//x/a', '/api/x/a/b', '/x/a'])
      expect((await get(path)).status, path).toBe(299);
    for (const method of ['HEAD', 'POST', 'DELETE', 'OPTIONS'])
      expect((await get('/api/x/a-1', { method })).status, method).toBe(299);
    expect(seen).toEqual(['GET /api/x/a-1?q=2 a-1 mine']);
    expect(served[0]).toEqual({ route: '/api/x', method: 'GET', status: 304, seconds: 0 });
  });

  it('has the headers of every answer, and hears who asks from our server alone', async () => {
    const { get } = await serving([
      route(({ headers }) => Response.json({ caller: headers.get(CALLER_HEADER) })),
    ]);
    const { headers, text } = await get('/api/x/a', { headers: { [CALLER_HEADER]: '198.51.100.1' } });
    expect(JSON.parse(text)).toEqual({ caller: '127.0.0.1' });
    expect(headers['content-security-policy']).toContain("default-src 'none'");
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['content-length']).toBe(String(text.length));
  });

  it('is sent in gzip where that is taken and saves something', async () => {
    const { get } = await serving([
      route(async (_, { params }) => new Response((await params).id === 'long' ? LONG : 'short')),
    ]);
    const taken = async (path: string, accepts?: string) =>
      get(path, accepts === undefined ? {} : { headers: { 'accept-encoding': accepts } });
    // RFC 9110, section 12.5.3.
    for (const accepts of ['gzip', 'br, gzip', 'deflate, GZIP;q=0.5', 'gzip; q=1.0, br']) {
      const { headers, bytes } = await taken('/api/x/long', accepts);
      expect([headers['content-encoding'], headers.vary], accepts).toEqual(['gzip', 'accept-encoding']);
      expect(gunzipSync(bytes).toString('utf8')).toBe(LONG);
      expect(bytes.length).toBeLessThan(LONG.length);
    }
    for (const accepts of [undefined, 'br', 'gzip;q=0', 'gzip;q=0.000', 'xgzip', 'identity']) {
      const { headers, text } = await taken('/api/x/long', accepts);
      expect([headers['content-encoding'], headers.vary, text], accepts).toEqual([
        undefined,
        'accept-encoding',
        LONG,
      ]);
    }
    expect((await taken('/api/x/short', 'gzip')).text).toBe('short');
  });

  it('reads its body, or leaves it or the rest of it, and the connection goes on', async () => {
    const { get, connections } = await serving([
      route(async (request, { params }) => {
        const { id } = await params;
        if (id === 'unread') return new Response('unread', { status: 429 });
        const json = await readJsonBody(request, 1000);
        return json.ok ? Response.json(json.value) : new Response(null, { status: json.reason.status });
      }, 'POST'),
    ]);
    const headers = { 'content-type': 'application/json' };
    const send = (path: string, body: string, more = {}) =>
      get(path, { method: 'POST', headers: { ...headers, ...more }, body });
    expect((await send('/api/x/a', '{"a":1}')).text).toBe('{"a":1}');
    expect((await send('/api/x/unread', LONG.repeat(100))).status).toBe(429);
    // With its length told, and without.
    expect((await send('/api/x/a', LONG.repeat(100))).status).toBe(413);
    expect((await send('/api/x/a', LONG.repeat(100), { 'transfer-encoding': 'chunked' })).status).toBe(413);
    expect((await send('/api/x/a', '{"a":2}')).text).toBe('{"a":2}');
    expect(connections()).toBe(1);
  });

  it('that fails is told without its inside', async () => {
    const fault = new Error('inside');
    const { get, faults } = await serving([route(() => Promise.reject(fault))]);
    const { status, text } = await get('/api/x/a');
    expect([status, text]).toEqual([500, '']);
    expect(faults).toEqual([fault]);
  });

  it('is health, a plan, or whatever is asked of one board', async () => {
    const { get } = await serving(STRAIGHT_ROUTES);
    expect(JSON.parse((await get('/api/health')).text)).toEqual({ status: 'ok' });
    expect((await get('/api/boards/abc')).status).toBe(401);
    const headers = { 'content-type': 'application/json' };
    const plan = await get('/api/plan', { method: 'POST', headers, body: JSON.stringify(NIGHT) });
    expect(plan.status).toBe(200);
    expect(JSON.parse(plan.text).swaps.length).toBeGreaterThan(0);
    const bodied = {
      headers: { ...headers, authorization: 'Bearer none', 'content-length': '2' },
      body: '{}',
    };
    for (const [method, path] of [
      ['PATCH', ''],
      ['DELETE', ''],
      ['POST', '/done'],
      ['PUT', '/subscriptions'],
      ['DELETE', '/subscriptions'],
    ] as const)
      expect((await get(`/api/boards/abc${path}`, { method, ...bodied })).status, `${method} ${path}`).toBe(
        404,
      );
    for (const path of ['/api', '/api/forecast', '/api/boards', '/api/boards/abc/done', '/api/plan.ics'])
      expect((await get(path)).status, path).toBe(299);
  });

  it.each(OF_A_BOARD)('is each that takes an address for each board: %s', async (path) => {
    const { OPTIONS } = (await import(join(folder, '..', path, 'route.ts'))) as {
      OPTIONS: (request: Request) => Promise<Response> | Response;
    };
    const allowed = (await OPTIONS(new Request('http://localhost/'))).headers.get('allow') ?? '';
    const taken = allowed.split(', ').filter((method) => !['HEAD', 'OPTIONS'].includes(method));
    const address = `/api/boards/${path.replace('[id]', 'a-1').replace(/\/\.$/, '')}`;
    const straight = STRAIGHT_ROUTES.filter((each) => each.path.test(address)).map(({ method }) => method);
    expect(straight.toSorted()).toEqual(taken.toSorted());
  });
});
