import { request as ask, createServer, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { answering } from '@/app/api/_serve/answering';
import { callerOfSocket } from '@/app/api/_serve/caller-address';
import { CALLER_HEADER } from '@/app/api/_serve/served-process';
import { readServeSettings, SettingProblem } from '@/app/api/_serve/settings';
import type { Served } from '@/app/api/_serve/watch';

const stops: (() => void)[] = [];
afterEach(() => {
  for (const stop of stops.splice(0)) stop();
});

type Framework = Parameters<typeof answering>[0]['answer'];

/** A server with a framework that says what it sees, and everything that is told of it. */
async function serving(
  environment: Readonly<Record<string, string>> = {},
  answer: Framework = async (request, response) => {
    response.end(JSON.stringify(request.headers));
  },
) {
  const served: Served[] = [];
  const faults: unknown[] = [];
  const server = createServer(
    answering({
      settings: readServeSettings(environment),
      routeOf: (path) => (path.startsWith('/api/') ? '/api/x' : 'none'),
      compressed: new Map(),
      watch: { served: (one) => served.push(one), upstreamFailed: () => {}, planned: () => {} },
      seconds: () => 0,
      fail: (thrown) => faults.push(thrown),
      straight: () => [],
      answer,
    }),
  );
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  stops.push(() => server.close());
  const { port } = server.address() as AddressInfo;
  const get = (path: string, method = 'GET', headers: Record<string, string> = {}) =>
    new Promise<{ status: number; headers: IncomingMessage['headers']; text: string }>((resolve, reject) => {
      ask({ host: '127.0.0.1', port, path, method, headers }, (answered) => {
        let text = '';
        answered.on('data', (data) => {
          text += String(data);
        });
        answered.on('end', () =>
          resolve({ status: answered.statusCode ?? 0, headers: answered.headers, text }),
        );
      })
        .on('error', reject)
        .end();
    });
  return { get, served, faults };
}

describe('the server in front of the framework', () => {
  it('ask for https only where that is set, and below this name only where that is set too', async () => {
    const sent = async (environment: Record<string, string>) =>
      (await (await serving(environment)).get('/')).headers['strict-transport-security'];
    expect(await sent({})).toBeUndefined();
    expect(await sent({ HSTS_SUBDOMAINS: '1' })).toBeUndefined();
    expect(await sent({ HSTS_SECONDS: '600' })).toBe('max-age=600');
    // RFC 6797, section 6.1.
    expect(await sent({ HSTS_SECONDS: '600', HSTS_SUBDOMAINS: '1' })).toBe('max-age=600; includeSubDomains');
  });

  it('says who asks by what it saw, whatever the caller wrote, and lets no call of an action through', async () => {
    const { get } = await serving();
    const seen = JSON.parse(
      (await get('/api/x', 'POST', { [CALLER_HEADER]: '198.51.100.1', 'next-action': 'abc' })).text,
    );
    expect(seen[CALLER_HEADER]).toBe('127.0.0.1');
    expect(seen['next-action']).toBeUndefined();
  });

  it('refuses methods that mean nothing here before the framework sees them', async () => {
    const { get, served } = await serving({}, () => Promise.reject(new Error('was asked')));
    for (const [path, method] of [
      ['/', 'TRACE'],
      ['/', 'POST'],
      ['/trail', 'DELETE'],
      ['/api/x', 'TRACE'],
      ['/api/x', 'PROPFIND'],
      ['/apiary', 'POST'],
    ] as const) {
      const { status, headers } = await get(path, method);
      expect([status, headers['content-type']], `${method} ${path}`).toEqual([
        405,
        'application/problem+json',
      ]);
      expect(headers.allow).toContain('GET');
      expect(headers['x-content-type-options']).toBe('nosniff');
    }
    // A method of somebody's own making is not told on.
    expect(new Set(served.map(({ method }) => method))).toEqual(new Set(['other', 'POST', 'DELETE']));
  });

  it('refuses an address that cannot be read, wherever it stands, and no other', async () => {
    const { get } = await serving();
    for (const path of [
      '/%',
      '/api/boards/%zz',
      '/api/boards/%C3%28/done',
      '/trail/%e2%82',
      '/api/%ff?x=1',
    ]) {
      const { status, headers, text } = await get(path);
      expect([status, headers['content-type']], path).toEqual([400, 'application/problem+json']);
      expect(JSON.parse(text), path).toMatchObject({ title: 'Bad Request', status: 400 });
    }
    for (const path of ['/%2F', '/api/boards/%C3%A9', '/trail?d=%zz', '/a%20b'])
      expect((await get(path)).status, path).toBe(200);
  });

  it('answers what the framework fails at without its inside, and tells the log', async () => {
    const fault = new Error('inside');
    const { get, served, faults } = await serving({}, () => Promise.reject(fault));
    const { status, text } = await get('/api/plan?d=secret');
    expect([status, text]).toEqual([500, '']);
    expect(faults).toEqual([fault]);
    expect(served).toEqual([{ route: '/api/x', method: 'GET', status: 500, seconds: 0 }]);
  });
});

describe('a caller', () => {
  it.each([
    ['192.0.2.7', '192.0.2.7'],
    ['::ffff:192.0.2.7', '192.0.2.7'],
    // One network of 64 bits is one household (RFC 6177).
    ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2::/64'],
    ['2001:db8:1:2::9', '2001:db8:1:2::/64'],
    ['2001:db8::9', '2001:db8:0:0::/64'],
    ['fe80::1%eth0', 'fe80:0:0:0::/64'],
    ['::1', '0:0:0:0::/64'],
    [undefined, 'unknown'],
  ])('at %s is %s', (address, caller) => {
    expect(callerOfSocket(address)).toBe(caller);
  });
});

describe('settings', () => {
  it('serve this computer alone where nothing is said', () => {
    expect(readServeSettings({})).toEqual({
      host: '127.0.0.1',
      port: 3000,
      httpsOnlySeconds: 0,
      httpsOnlyBelow: false,
      metricsPort: null,
      logsRequests: false,
      planningThreads: null,
      proxies: 0,
    });
    expect(readServeSettings({ HOST: '0.0.0.0', PORT: '8080', METRICS_PORT: '9464' })).toMatchObject({
      host: '0.0.0.0',
      port: 8080,
      metricsPort: 9464,
    });
  });

  it.each([{ PORT: 'http' }, { PORT: '70000' }, { HSTS_SECONDS: '1 year' }, { PLANNING_THREADS: '-1' }])(
    'that cannot be meant end the start: %o',
    (environment) => {
      expect(() => readServeSettings(environment)).toThrow(SettingProblem);
    },
  );
});
