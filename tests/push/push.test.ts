import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isOpenAddress, openLookup } from '@/lib/push/open-addresses';
import { newPushKeys, type Push, sendPush } from '@/lib/push/send-push';
import { ownServices, serviceOf } from '@/lib/push/services';
import { openPush } from '@/tests/support/open-push';
import { type PushService, startPushService } from '@/tests/support/push-service';

const bytes = (text: string) => Buffer.from(text, 'base64url');

describe('opening a message', () => {
  // RFC 8291, section 5 and appendix A.
  const PHONE = {
    privateKey: bytes('q1dXpw3UpT5VOmu_cf_v6ih07Aems3njxI-JWgLcM94'),
    auth: bytes('BTBZMqHH6r4Tts7J_aSIgg'),
  };
  const BODY =
    'DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A_yl95bQpu6cVPTpK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN';

  it('gives the text of the example of RFC 8291', () => {
    expect(openPush(bytes(BODY), PHONE)).toBe('When I grow up, I want to be a watermelon');
  });

  it('fails where one bit of it is changed', () => {
    const changed = bytes(BODY);
    changed.writeUInt8(changed.readUInt8(changed.length - 20) ^ 1, changed.length - 20);
    expect(() => openPush(changed, PHONE)).toThrow();
  });
});

describe('sending a message', () => {
  let service: PushService;
  const keys = { ...newPushKeys(), contact: 'mailto:tests@example.org' };
  const push = (phone: string, more: Partial<Push> = {}): Push => {
    const { endpoint, keys: own } = service.subscription(phone);
    return { endpoint, ...own, payload: '{"title":"Fit 420","body":"–"}', ttl: 90, topic: 'ada', ...more };
  };
  const send = (one: Push) => sendPush(one, { keys, own: [service.url] });

  beforeAll(async () => {
    service = await startPushService();
  });
  afterAll(() => service.stop());

  it('seals it for the one phone, and says how long, how urgent and about what', async () => {
    expect(await send(push('a'))).toEqual({ kind: 'taken' });
    const { headers, message } = service.received.at(-1)!;
    expect(message).toEqual({ title: 'Fit 420', body: '–' });
    // RFC 8030, sections 5.2 to 5.4; RFC 8292, section 3.
    expect(headers).toMatchObject({
      ttl: '90',
      topic: 'ada',
      urgency: 'high',
      'content-encoding': 'aes128gcm',
    });
    expect(headers.authorization).toMatch(new RegExp(`^vapid t=[\\w.-]+, k=${keys.publicKey}$`));
  });

  it.each([
    [404, { kind: 'gone' }],
    [410, { kind: 'gone' }],
    [429, { kind: 'later', retryAfterSeconds: 7 }],
    [503, { kind: 'later', retryAfterSeconds: 7 }],
    [400, { kind: 'refused' }],
    [302, { kind: 'refused' }],
  ])('takes a %i for what it means', async (status, outcome) => {
    const one = push('b');
    const before = service.received.length;
    service.answerNext({ status, headers: { 'retry-after': '7', location: `${service.url}/push/a` } });
    expect(await send(one)).toEqual(outcome);
    expect(service.received).toHaveLength(before);
  });

  it('tries again later where nobody answers, and gives up on keys that are none', async () => {
    const gone = await startPushService();
    const { endpoint, keys: own } = gone.subscription('c');
    await gone.stop();
    const one = { endpoint, ...own, payload: '{}', ttl: 1, topic: 'x' };
    expect(await sendPush(one, { keys, own: [gone.url] })).toEqual({
      kind: 'later',
      retryAfterSeconds: null,
    });
    expect(await send(push('d', { p256dh: Buffer.alloc(65).toString('base64url') }))).toEqual({
      kind: 'gone',
    });
  });

  it('speaks to no address that is not on the list', async () => {
    expect(await sendPush(push('e'), { keys, own: [] })).toEqual({ kind: 'gone' });
  });
});

describe('a push address', () => {
  it.each([
    ['https://fcm.googleapis.com/fcm/send/abc', 'open'],
    ['https://updates.push.services.mozilla.com/wpush/v2/abc', 'open'],
    ['https://web.push.apple.com/abc', 'open'],
    ['https://wns2-by3p.notify.windows.com/w/?token=abc', 'open'],
    ['http://127.0.0.1:4000/push/abc', 'own'],
    ['http://fcm.googleapis.com/fcm/send/abc', null],
    ['https://fcm.googleapis.com:8443/fcm/send/abc', null],
    ['https://user@fcm.googleapis.com/fcm/send/abc', null],
    ['https://fcm.googleapis.com.evil.example/abc', null],
    ['https://evil.example/fcm.googleapis.com', null],
    ['https://evilnotify.windows.com/abc', null],
    ['https://127.0.0.1/abc', null],
    ['https://10.0.0.1/abc', null],
    ['https://169.254.169.254/latest/meta-data', null],
    ['https://[::1]/abc', null],
    ['http://127.0.0.1:4001/push/abc', null],
    ['file:///etc/passwd', null],
    ['nonsense', null],
  ])('%s is %s', (endpoint, service) => {
    expect(serviceOf(endpoint, ownServices({ PUSH_SERVICES: 'http://127.0.0.1:4000, nonsense' }))).toBe(
      service,
    );
  });
});

describe('an address of the internet protocol', () => {
  // Special-purpose registries of RFC 6890, from memory.
  it.each([
    '127.0.0.1',
    '10.0.0.1',
    '169.254.169.254',
    '192.168.1.1',
    '172.20.0.1',
    '100.64.0.1',
    '0.0.0.0',
    '::1',
    '::',
    'fe80::1',
    'fd00::1',
    '::ffff:127.0.0.1',
    '64:ff9b::7f00:1',
    '2002:7f00:1::',
    '2001:0:1::',
  ])('%s leads inside', (address) => expect(isOpenAddress(address)).toBe(false));
  it.each(['142.250.185.138', '8.8.8.8', '2a00:1450:4001:82a::200a'])('%s leads outside', (address) =>
    expect(isOpenAddress(address)).toBe(true),
  );

  const found = (...addresses: string[]) =>
    openLookup(((_: string, __: object, done: (...given: unknown[]) => void) =>
      done(
        null,
        addresses.map((address) => ({ address, family: 4 })),
      )) as never);
  const looked = (lookup: ReturnType<typeof openLookup>) =>
    new Promise((resolve) =>
      lookup('push.example', {}, (error, address) => resolve(error?.message ?? address)),
    );

  it('is refused where a listed name leads inside, by one of several too', async () => {
    expect(await looked(found('127.0.0.1'))).toBe('push.example does not lead outside');
    expect(await looked(found('8.8.8.8', '10.0.0.1'))).toBe('push.example does not lead outside');
    expect(await looked(found('8.8.8.8'))).toBe('8.8.8.8');
  });
});
