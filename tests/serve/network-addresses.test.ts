import { afterEach, describe, expect, it } from 'vitest';
import { asksItself, networkAddresses } from '@/app/api/_serve/network-addresses';
import { announceServedProcess, CALLER_HEADER } from '@/app/api/_serve/served-process';
import { GET } from '@/app/api/addresses/route';

const four = (address: string, internal = false) => ({ address, internal, family: 'IPv4' as const });
const NETWORKS = {
  lo: [four('127.0.0.1', true)],
  wlan0: [four('192.168.1.20'), { ...four('fe80::1'), family: 'IPv6' as const }],
  hotspot: [four('10.42.0.1')],
} as never;

describe('the addresses of a server on its network', () => {
  it('are those of every network where it listens on all of them', () => {
    expect(networkAddresses({ host: '0.0.0.0', port: 3000 }, NETWORKS)).toEqual([
      'http://192.168.1.20:3000',
      'http://10.42.0.1:3000',
    ]);
  });

  it('are the one it listens on, and none where that is its own computer', () => {
    const at = (host: string) => networkAddresses({ host, port: 80 }, NETWORKS);
    expect(at('10.42.0.1')).toEqual(['http://10.42.0.1:80']);
    expect(at('2001:db8::1')).toEqual(['http://[2001:db8::1]:80']);
    for (const own of ['127.0.0.1', 'localhost', '::1']) expect(at(own)).toEqual([]);
  });

  it.each([
    ['127.0.0.1', 'localhost:3000', true],
    ['0:0:0:0::/64', '[::1]:3000', true],
    ['127.0.0.1', 'heavy.example', false],
    // A page of somebody else's that points its own name here.
    ['127.0.0.1', 'localhost.example:3000', false],
    ['192.168.1.31', 'localhost:3000', false],
    ['everyone', 'localhost', false],
  ])('of %s for %s are told: %s', (caller, host, told) => {
    expect(asksItself({ caller, host })).toBe(told);
  });
});

describe('GET /api/addresses', () => {
  const ask = (caller: string, host: string) =>
    GET(new Request('http://local/api/addresses', { headers: { host, [CALLER_HEADER]: caller } }));
  afterEach(() => Object.assign(globalThis, { heavyAirServed: undefined }));

  it('answers the computer it runs on, and nobody else', async () => {
    // Without a server of ours the header is anybody's word.
    expect((await ask('127.0.0.1', 'localhost')).status).toBe(403);
    announceServedProcess({ ending: false, upstreamFailed: () => undefined } as never);
    expect((await ask('192.168.1.31', '192.168.1.20:3000')).status).toBe(403);
    const own = await ask('127.0.0.1', 'localhost:3000');
    // Under test the server has no HOST: it listens to its own computer alone.
    expect([own.status, await own.json()]).toEqual([200, { addresses: [] }]);
  });
});
