import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request as ask, createServer, type IncomingHttpHeaders, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { brotliDecompressSync } from 'node:zlib';
import { afterEach, describe, expect, it } from 'vitest';
import { writeBrotli } from '@/.scripts/brotli.mjs';
import { wantsCoding } from '@/app/api/_serve/accept-encoding';
import { answering } from '@/app/api/_serve/answering';
import { readCompressed } from '@/app/api/_serve/brotli';
import { readServeSettings } from '@/app/api/_serve/settings';

const stops: (() => void)[] = [];
afterEach(() => {
  for (const stop of stops.splice(0)) stop();
});

const SCRIPT = 'export const air = "heavy";\n'.repeat(400);
const PAGE = `<!doctype html><title>Trail</title>${'<p>Grüße, cold air</p>'.repeat(90)}`;
const TINY = '{}';

/** A build with one script, one file too small to gain by it, one picture and one page. */
function built(): string {
  const folder = mkdtempSync(join(tmpdir(), 'brotli-'));
  stops.push(() => rmSync(folder, { recursive: true, force: true }));
  mkdirSync(join(folder, '.next', 'static', 'chunks'), { recursive: true });
  mkdirSync(join(folder, 'public'));
  writeFileSync(join(folder, '.next', 'static', 'chunks', 'a.js'), SCRIPT);
  writeFileSync(join(folder, '.next', 'static', 'tiny.json'), TINY);
  writeFileSync(join(folder, 'public', 'icon.png'), SCRIPT);
  writeBrotli(join(folder, '.next'), join(folder, 'public'), [{ route: '/trail', html: PAGE }]);
  return folder;
}

type Answer = { readonly status: number; readonly headers: IncomingHttpHeaders; readonly body: Buffer };

const file = (response: ServerResponse, type: string, text: string): ServerResponse =>
  response
    .setHeader('cache-control', 'public, max-age=31536000, immutable')
    .setHeader('etag', 'W/"1-2"')
    .setHeader('last-modified', 'Thu, 29 Jan 2026 18:15:00 GMT')
    .setHeader('vary', 'rsc, Accept-Encoding')
    .setHeader('content-type', type)
    .setHeader('content-length', Buffer.byteLength(text));

/** A server whose framework sends a file piece by piece and a page at once, as the real one does. */
async function serving() {
  const seen: IncomingHttpHeaders[] = [];
  const server = createServer(
    answering({
      settings: readServeSettings({}),
      routeOf: () => 'none',
      compressed: readCompressed(built()),
      watch: { served: () => {}, upstreamFailed: () => {}, planned: () => {} },
      seconds: () => 0,
      fail: (thrown) => {
        throw thrown;
      },
      straight: () => [],
      answer: async (request, response) => {
        seen.push({ ...request.headers });
        const path = request.url?.split('?')[0];
        if (request.headers['if-none-match'] === 'W/"1-2"') {
          response.writeHead(304, { etag: 'W/"1-2"' }).end();
        } else if (request.headers.rsc === '1') {
          response.setHeader('content-type', 'text/x-component').end('0:{}');
        } else if (path === '/_next/static/chunks/a.js') {
          file(response, 'application/javascript; charset=UTF-8', SCRIPT);
          if (request.method === 'HEAD') response.end();
          else Readable.from([SCRIPT.slice(0, 999), SCRIPT.slice(999)]).pipe(response);
        } else if (path === '/trail') {
          file(response, 'text/html; charset=utf-8', PAGE).end(request.method === 'HEAD' ? undefined : PAGE);
        } else {
          response.writeHead(404, { 'content-type': 'text/plain' }).end('not here');
        }
      },
    }),
  );
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  stops.push(() => server.close());
  const { port } = server.address() as AddressInfo;
  const get = (path: string, headers: Record<string, string> = {}, method = 'GET') =>
    new Promise<Answer>((resolve, reject) => {
      ask({ host: '127.0.0.1', port, path, method, headers }, (answer) => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.on('end', () =>
          resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body: Buffer.concat(parts) }),
        );
      })
        .on('error', reject)
        .end();
    });
  return { get, seen };
}

const BR = { 'accept-encoding': 'gzip, deflate, br' };

describe('brotli', () => {
  // RFC 9110, sections 8.4.1 (codings know no case), 12.4.2 (weights) and 12.5.3 with its examples.
  it.each([
    ['gzip, deflate, br, zstd', true],
    ['br', true],
    ['BR', true],
    ['gzip;q=1.0, br;q=0.001', true],
    ['br ; q=0.5', true],
    ['br;Q=1.000', true],
    ['br;q=0', false],
    ['br;q=0.000, gzip', false],
    ['br;q=1.001', false],
    ['br;q=half', false],
    ['compress, gzip', false],
    ['compress;q=0.5, gzip;q=1.0', false],
    ['gzip;q=1.0, identity; q=0.5, *;q=0', false],
    ['bro, x-br', false],
    // Whoever takes whatever comes has not said that they know it.
    ['*', false],
    ['', false],
    [undefined, false],
  ])('for "accept-encoding: %s": %s', (header, wanted) => {
    expect(wantsCoding(header, 'br')).toBe(wanted);
  });

  it.each([
    ['/_next/static/chunks/a.js', SCRIPT],
    ['/_next/static/chunks/a.js?v=1', SCRIPT],
    ['/trail', PAGE],
    ['/trail?d=1', PAGE],
  ])('of %s is the same answer, only shorter', async (path, text) => {
    const { get, seen } = await serving();
    const plain = await get(path);
    const short = await get(path, BR);
    expect(plain.body.toString()).toBe(text);
    expect(brotliDecompressSync(short.body).toString()).toBe(text);
    expect(short.headers).toMatchObject({
      'content-encoding': 'br',
      'content-length': String(short.body.length),
      vary: 'rsc, Accept-Encoding',
    });
    expect(short.body.length).toBeLessThan(plain.body.length / 5);
    const rest = ({ headers }: Answer) => ({
      ...headers,
      'content-encoding': '',
      'content-length': '',
      date: '',
    });
    expect(rest(short)).toEqual(rest(plain));
    expect(short.headers['x-content-type-options']).toBe('nosniff');
    // The framework is not asked to compress it too.
    expect(seen.map((headers) => headers['accept-encoding'])).toEqual([undefined, undefined]);

    const head = await get(path, BR, 'HEAD');
    expect([head.status, head.body.length]).toEqual([200, 0]);
    expect({ ...head.headers, date: '' }).toEqual({ ...short.headers, date: '' });
  });

  it('is not sent to whoever did not ask for it, nor for a part, a nod or other data of the address', async () => {
    const { get, seen } = await serving();
    const path = '/_next/static/chunks/a.js';
    for (const asked of [{ 'accept-encoding': 'gzip' }, { ...BR, range: 'bytes=0-9' }]) {
      const { headers } = await get(path, asked);
      expect(headers['content-encoding']).toBeUndefined();
      expect(seen.at(-1)?.['accept-encoding']).toBe(asked['accept-encoding']);
    }
    const nod = await get(path, { ...BR, 'if-none-match': 'W/"1-2"' });
    expect([nod.status, nod.headers['content-encoding'], nod.body.length]).toEqual([304, undefined, 0]);
    const data = await get('/trail', { ...BR, rsc: '1' });
    expect([data.headers['content-encoding'], data.body.toString()]).toEqual([undefined, '0:{}']);
  });

  it('is there for what the build listed and for no other address', async () => {
    const { get, seen } = await serving();
    for (const path of [
      '/_next/static/chunks/none.js',
      '/_next/static/tiny.json',
      '/icon.png',
      '/files.json',
      '/trail.html.br',
      '/_next/static/chunks/a.js.br',
      '/_next/static/../../trail',
      '/..%2f..%2fetc/passwd',
      '/%5fnext/static/chunks/a.js',
      '/__proto__',
      '/constructor',
    ]) {
      const { status, headers, body } = await get(path, BR);
      expect([status, headers['content-encoding'], body.toString()], path).toEqual([
        404,
        undefined,
        'not here',
      ]);
      expect(seen.at(-1)?.['accept-encoding'], path).toBe(BR['accept-encoding']);
    }
    expect((await get('/trail', BR, 'POST')).status).toBe(405);
  });

  it('is written where it is smaller, and the same twice', () => {
    const [one, two] = [built(), built()].map((folder) => join(folder, '.next', 'brotli'));
    const files = readdirSync(one ?? '', { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice((one ?? '').length + 1));
    expect(files.sort()).toEqual(['_next/static/chunks/a.js.br', 'files.json', 'trail.html.br']);
    for (const name of files)
      expect(readFileSync(join(one ?? '', name)), name).toEqual(readFileSync(join(two ?? '', name)));
  });
});
