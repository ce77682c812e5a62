import { readdirSync, readFileSync, statSync } from 'node:fs';
import { type IncomingMessage, request as plainRequest } from 'node:http';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { brotliDecompressSync } from 'node:zlib';
import { type APIResponse, expect } from '@playwright/test';
import { test } from './test';

const STATIC = join('.next', 'static');
const FILES = readdirSync(STATIC, { recursive: true, encoding: 'utf8' });
const sizeOf = (file: string): number => statSync(join(STATIC, file)).size;
/** The largest of its kind: the smallest ones are no shorter compressed. */
const fileOf = (ending: string) =>
  `/_next/static/${FILES.filter((file) => file.endsWith(ending)).toSorted((a, b) => sizeOf(b) - sizeOf(a))[0]}`;

/** Every page of the build; the address of a page that is not there stands for all of those. */
const PAGES = [
  ...Object.keys(JSON.parse(readFileSync(join('.next', 'inline-script-hashes.json'), 'utf8'))),
  '/no-page-here',
].filter((path) => !path.startsWith('/_'));
const DATA = [
  '/api',
  '/api/health',
  '/api/ready',
  '/api/no-such',
  '/api/places',
  '/api/plan.ics',
  '/api/plan.csv',
];
const ASSETS = [fileOf('.js'), fileOf('.css'), '/_next/static/chunks/none.js'];
const OTHERS = ['/icon.svg', '/manifest.webmanifest', '/offline-worker.js'];

const policyOf = (answer: APIResponse) => answer.headers()['content-security-policy'] ?? '';

test('every kind of answer carries its policy and the headers that keep it from being misused', async ({
  request,
}) => {
  for (const path of [...PAGES, ...DATA, ...ASSETS, ...OTHERS]) {
    const answer = await request.get(path);
    expect(answer.headers(), path).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'same-origin',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      // As the test's server is told to, and for this name alone.
      'strict-transport-security': 'max-age=63072000',
      'permissions-policy': expect.stringContaining('geolocation=(self), camera=()'),
    });
    const scripts = policyOf(answer)
      .split('; ')
      .filter((part) => /^(script|default)-src/.test(part));
    expect(scripts.join(), path).not.toMatch(/unsafe|http|\*/);
    for (const part of ["frame-ancestors 'none'", "base-uri 'none'", "object-src 'none'"])
      expect(policyOf(answer), path).toContain(part);
    expect(answer.headers()['x-powered-by'], path).toBeUndefined();
    expect(answer.headers()['access-control-allow-origin'], path).toBeUndefined();
    expect(answer.headers()['set-cookie'], path).toBeUndefined();
  }
  for (const path of PAGES) expect(policyOf(await request.get(path)), path).toContain("'sha256-");
});

test('an answer that leads on, or that refuses before anybody looks, carries them too', async ({
  request,
}) => {
  const answers = [
    await request.get('/trail/', { maxRedirects: 0 }),
    await request.fetch('/', { method: 'TRACE' }).catch(() => null),
    await request.fetch('/trail', { method: 'PROPFIND' }),
    await request.fetch('/', { method: 'POST', headers: { 'next-action': 'a'.repeat(40) }, data: '[]' }),
  ].filter((answer) => answer !== null);
  expect(answers.map((answer) => answer.status()).slice(0, 1)).toEqual([308]);
  expect(answers.slice(1).map((answer) => answer.status())).toEqual(answers.slice(1).map(() => 405));
  for (const answer of answers) {
    expect(answer.headers()).toMatchObject({
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
      'strict-transport-security': 'max-age=63072000',
      'content-security-policy': expect.stringContaining("default-src 'none'"),
    });
    expect(await answer.text()).not.toMatch(/\bat \S+ \(|node_modules/);
  }
});

test('a page is asked for anew each time and answered with a nod; what is named by its content is kept', async ({
  request,
}) => {
  for (const path of PAGES.filter((each) => each !== '/no-page-here')) {
    const answer = await request.get(path);
    expect(answer.headers()['cache-control'], path).toBe('no-cache');
    const etag = answer.headers().etag ?? '';
    expect(etag, path).toMatch(/^(W\/)?"[^"]+"$/);
    const again = await request.get(path, { headers: { 'if-none-match': etag } });
    expect([again.status(), again.headers()['cache-control']], path).toEqual([304, 'no-cache']);
  }
  for (const path of ASSETS.slice(0, 2))
    expect((await request.get(path)).headers()['cache-control'], path).toBe(
      'public, max-age=31536000, immutable',
    );
  expect((await request.get('/offline-worker.js')).headers()['cache-control']).toContain('no-cache');
});

test('a server says that it is ready, and what it runs', async ({ request }) => {
  const answer = await request.get('/api/ready');
  expect(answer.status()).toBe(200);
  const build = readFileSync(join('.next', 'BUILD_ID'), 'utf8');
  const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
  expect(await answer.json()).toMatchObject({ ready: true, checks: { serving: true }, version, build });
});

test('what is no page says so in its own kind, keeps its inside to itself and is not kept', async ({
  request,
}) => {
  const unknown = await request.get('/api/no-such');
  expect([unknown.status(), unknown.headers()['content-type']]).toEqual([404, 'application/problem+json']);
  for (const path of [
    '/.git/config',
    '/package.json',
    '/.env',
    '/..%2f..%2fetc/passwd',
    '/_next/image?url=/icon-512.png&w=64&q=75',
  ]) {
    const answer = await request.get(path);
    expect(answer.status(), path).toBe(404);
    expect(await answer.text(), path).not.toMatch(/node_modules|\bat \S+ \(|dependencies"|root:/);
  }
  for (const path of DATA)
    expect((await request.get(path)).headers()['cache-control'], path).toContain('no-store');
});

test('a method that is not spoken is refused with the ones that are', async ({ request }) => {
  for (const [path, allow] of [
    ['/api/plan', 'POST'],
    ['/api/forecast', 'GET'],
    ['/', 'GET'],
  ] as const)
    for (const method of ['DELETE', 'PATCH', 'PUT']) {
      const answer = await request.fetch(path, { method });
      expect([answer.status(), answer.headers().allow?.split(',')[0]], `${method} ${path}`).toEqual([
        405,
        allow,
      ]);
    }
  const preflight = await request.fetch('/api/plan', {
    method: 'OPTIONS',
    headers: { origin: 'https://elsewhere.example', 'access-control-request-method': 'POST' },
  });
  expect([preflight.status(), preflight.headers().allow]).toEqual([405, 'POST']);
});

/** An address as it is, which fetch would tidy up before sending it, and an answer as it came. */
const rawAnswer = (path: string, baseURL: string, headers: Record<string, string> = {}) =>
  new Promise<{ answer: IncomingMessage; body: Buffer }>((done, fail) => {
    const { hostname, port } = new URL(baseURL);
    plainRequest({ hostname, port, path, method: 'GET', headers }, (answer) => {
      buffer(answer).then((body) => done({ answer, body }), fail);
    })
      .on('error', fail)
      .end();
  });

test('no address leads away to another site', async ({ baseURL }) => {
  for (const path of [
    '//elsewhere.example/',
    '//elsewhere.example/%2f..',
    '/%5celsewhere.example/',
    '/trail/',
    '/\\elsewhere.example/',
  ]) {
    const { location } = (await rawAnswer(path, baseURL ?? '')).answer.headers;
    if (location !== undefined)
      expect(new URL(location, baseURL).origin, path).toBe(new URL(baseURL ?? '').origin);
  }
});

test('what the build compressed is the same answer with other bytes, for every file and page of it', async ({
  baseURL,
}) => {
  const list: { path: string }[] = JSON.parse(readFileSync(join('.next', 'brotli', 'files.json'), 'utf8'));
  const paths = list.map(({ path }) => path);
  expect(paths).toEqual(
    expect.arrayContaining([...PAGES.filter((path) => path !== '/no-page-here'), ...ASSETS.slice(0, 2)]),
  );
  for (const path of paths) {
    const plain = await rawAnswer(path, baseURL ?? '');
    const short = await rawAnswer(path, baseURL ?? '', { 'accept-encoding': 'gzip, br' });
    const told = ({ answer }: typeof plain) => ({
      ...answer.headers,
      date: '',
      'content-encoding': '',
      'content-length': '',
    });
    expect(short.answer.headers['content-encoding'], path).toBe('br');
    expect(short.answer.headers.vary, path).toMatch(/accept-encoding/i);
    expect(told(short), path).toEqual(told(plain));
    expect(brotliDecompressSync(short.body).equals(plain.body), path).toBe(true);
  }
});

test('what is sent to browsers holds no setting of the server, no path of its disk and no source map', () => {
  expect(FILES.length).toBeGreaterThan(20);
  expect(FILES.filter((file) => file.endsWith('.map'))).toEqual([]);
  const inside =
    /_API_KEY|_BASE_URL|WEATHER_CONTACT|REQUESTS_PER_MINUTE|TRUSTED_PROXIES|\/(home|root|Users|tmp)\//;
  const cwd = process.cwd();
  const telling = FILES.filter((file) => /\.(js|css)$/.test(file)).filter((file) => {
    const text = readFileSync(join(STATIC, file), 'utf8');
    return inside.test(text) || text.includes(cwd);
  });
  expect(telling).toEqual([]);
});
