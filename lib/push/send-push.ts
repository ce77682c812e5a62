import { type IncomingMessage, request as requestHttp } from 'node:http';
import { request as requestHttps } from 'node:https';
import { generateRequestDetails, generateVAPIDKeys } from 'web-push';
import { openLookup } from './open-addresses';
import { serviceOf } from './services';

/** What signs a message for this server (RFC 8292). */
export type PushKeys = { readonly publicKey: string; readonly privateKey: string; readonly contact: string };

export type Push = {
  readonly endpoint: string;
  readonly p256dh: string;
  readonly auth: string;
  readonly payload: string;
  /** How long the push service may hold it [s]. */
  readonly ttl: number;
  /** A newer message of the same topic takes the place of one that waits. */
  readonly topic: string;
};

export type PushOutcome =
  | { readonly kind: 'taken' }
  /** The phone has gone: it is to be forgotten. */
  | { readonly kind: 'gone' }
  | { readonly kind: 'later'; readonly retryAfterSeconds: number | null }
  /** It will not be taken, however often it is sent. */
  | { readonly kind: 'refused' };

const TIMEOUT_MS = 10_000;

/** New keys, as base64url. */
export function newPushKeys(): { readonly publicKey: string; readonly privateKey: string } {
  return generateVAPIDKeys();
}

type Given = { readonly keys: PushKeys; readonly own: readonly string[] };

/** Seals, signs and sends one message, and says what came of it. Never throws for what the other side does. */
export async function sendPush(push: Push, { keys, own }: Given): Promise<PushOutcome> {
  const service = serviceOf(push.endpoint, own);
  if (service === null) return { kind: 'gone' };
  const details = sealed(push, keys);
  if (details === null) return { kind: 'gone' };
  const url = new URL(details.endpoint);
  const send = url.protocol === 'https:' ? requestHttps : requestHttp;
  return new Promise((resolve) => {
    const asked = send(url, {
      method: 'POST',
      headers: details.headers,
      // However slowly it goes on answering.
      signal: AbortSignal.timeout(TIMEOUT_MS),
      agent: false,
      ...(service === 'open' ? { lookup: openLookup() } : {}),
    });
    asked.on('error', () => resolve({ kind: 'later', retryAfterSeconds: null }));
    asked.on('response', (answer) => {
      answer.resume();
      answer.on('error', () => undefined);
      resolve(outcomeOf(answer));
    });
    asked.end(details.body);
  });
}

/** null where the phone's keys are no keys. */
function sealed({ endpoint, p256dh, auth, payload, ttl, topic }: Push, keys: PushKeys) {
  const { publicKey, privateKey, contact } = keys;
  try {
    return generateRequestDetails({ endpoint, keys: { p256dh, auth } }, payload, {
      vapidDetails: { subject: contact, publicKey, privateKey },
      TTL: ttl,
      topic,
      urgency: 'high',
    });
  } catch {
    return null;
  }
}

function outcomeOf({ statusCode = 0, headers }: IncomingMessage): PushOutcome {
  if (statusCode >= 200 && statusCode < 300) return { kind: 'taken' };
  if (statusCode === 404 || statusCode === 410) return { kind: 'gone' };
  if (statusCode !== 429 && statusCode < 500) return { kind: 'refused' };
  const wait = headers['retry-after'];
  return {
    kind: 'later',
    retryAfterSeconds: wait !== undefined && /^\d{1,6}$/.test(wait) ? Number(wait) : null,
  };
}
