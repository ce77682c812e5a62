import type { NetworkInterfaceInfo } from 'node:os';
import { describe, expect, it } from 'vitest';
import { callerOfSocket } from '@/app/api/_serve/caller-address';
import { isNear, isNearHost, ownAddresses } from '@/app/api/addresses/own-addresses';
import { GET } from '@/app/api/addresses/route';
import { problemOf } from './ask';

const card = (address: string, more: Partial<NetworkInterfaceInfo> = {}): NetworkInterfaceInfo =>
  ({
    address,
    family: 'IPv4',
    internal: false,
    netmask: '',
    mac: '',
    cidr: null,
    ...more,
  }) as NetworkInterfaceInfo;

const CARDS = {
  lo: [card('127.0.0.1', { internal: true }), card('::1', { family: 'IPv6', internal: true } as object)],
  docker0: [card('172.17.0.1')],
  wlan0: [card('192.168.1.20'), card('fe80::1', { family: 'IPv6' } as object)],
  eth0: [card('10.0.0.5'), card('203.0.113.9')],
};

describe('where others find this server', () => {
  it('is told by private addresses alone, those of a hot spot first', () => {
    expect(ownAddresses(CARDS, { host: '0.0.0.0', port: 3000 })).toEqual({
      origins: ['http://192.168.1.20:3000', 'http://10.0.0.5:3000', 'http://172.17.0.1:3000'],
      heardByOthers: true,
    });
    expect(ownAddresses(CARDS, { host: '0.0.0.0', port: 80 }).origins[0]).toBe('http://192.168.1.20');
    expect(ownAddresses(CARDS, { host: '10.0.0.5', port: 8080 }).origins).toEqual(['http://10.0.0.5:8080']);
  });

  it('is nowhere for a server that its own computer alone hears', () => {
    expect(ownAddresses(CARDS, { host: '127.0.0.1', port: 3000 })).toEqual({
      origins: [],
      heardByOthers: false,
    });
  });

  it('is told to callers from near, by the reserved networks', () => {
    // RFC 1918, RFC 1122, RFC 3927, RFC 4193, RFC 4291.
    const near = [
      '127.0.0.1',
      '::1',
      '10.1.2.3',
      '172.16.0.1',
      '172.31.9.9',
      '192.168.0.7',
      '169.254.1.1',
      'fd00::1',
      'fe80::1',
    ];
    for (const address of near) expect([address, isNear(callerOfSocket(address))]).toEqual([address, true]);
    // RFC 5737 and RFC 3849: addresses for examples, anywhere on the internet; and what is just outside the private ones.
    const far = ['203.0.113.9', '2001:db8::1', '172.15.0.1', '172.32.0.1', '192.169.0.1', '11.0.0.1'];
    for (const address of far) expect([address, isNear(callerOfSocket(address))]).toEqual([address, false]);
    expect(isNear('everyone')).toBe(false);
  });

  it('is told to no page that a foreign name leads here', () => {
    for (const host of ['localhost:3000', '127.0.0.1', '[::1]:3000', '192.168.1.20:3000'])
      expect(isNearHost(host)).toBe(true);
    for (const host of [
      '',
      'example.org',
      'localhost.example.org:3000',
      '192.168.1.20.example.org',
      '203.0.113.9',
    ])
      expect([host, isNearHost(host)]).toEqual([host, false]);
  });

  it('is not told where nobody knows who asks', async () => {
    const asked = GET(
      new Request('http://localhost:3000/api/addresses', { headers: { host: 'localhost:3000' } }),
    );
    expect((await problemOf(await asked)).status).toBe(404);
  });
});
