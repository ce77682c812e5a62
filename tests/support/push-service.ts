import { createECDH, randomBytes } from 'node:crypto';
import { createServer, type IncomingHttpHeaders } from 'node:http';
import { openPush } from './open-push';

export type ReceivedPush = {
  readonly phone: string;
  readonly headers: IncomingHttpHeaders;
  /** The message as the phone reads it. */
  readonly message: { readonly title: string; readonly body: string } & Readonly<Record<string, unknown>>;
};

/** A push service that gives out subscriptions and opens what is sent to them. */
export async function startPushService(
  port = 0,
  /** Hears of a message that was taken, before its sender does. */
  taken: (push: ReceivedPush) => void = () => undefined,
) {
  const phones = new Map<string, { readonly privateKey: Buffer; readonly auth: Buffer }>();
  const received: ReceivedPush[] = [];
  const answers: { status: number; headers?: Record<string, string> }[] = [];
  const server = createServer(async (request, response) => {
    const parts: Buffer[] = [];
    for await (const part of request) parts.push(part as Buffer);
    const phone = (request.url ?? '').split('/').at(-1) ?? '';
    const answer = answers.shift() ?? { status: 201 };
    const keys = phones.get(phone);
    if (answer.status < 300 && keys !== undefined) {
      const message = JSON.parse(openPush(Buffer.concat(parts), keys));
      const push = { phone, headers: request.headers, message };
      received.push(push);
      taken(push);
    }
    response.writeHead(keys === undefined ? 404 : answer.status, answer.headers ?? {}).end();
  });
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  const address = server.address();
  const url = `http://127.0.0.1:${typeof address === 'object' && address !== null ? address.port : port}`;
  return {
    url,
    received,
    /** Answers the next messages so, in turn; then 201. */
    answerNext: (...next: { status: number; headers?: Record<string, string> }[]) => answers.push(...next),
    /** What PushSubscription.toJSON() gives for a new phone. */
    subscription: (phone: string) => {
      const pair = createECDH('prime256v1');
      const p256dh = pair.generateKeys().toString('base64url');
      const auth = randomBytes(16);
      phones.set(phone, { privateKey: pair.getPrivateKey(), auth });
      return {
        endpoint: `${url}/push/${phone}`,
        expirationTime: null,
        keys: { p256dh, auth: auth.toString('base64url') },
      };
    },
    stop: () =>
      new Promise<void>((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

export type PushService = Awaited<ReturnType<typeof startPushService>>;
