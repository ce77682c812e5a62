import { createHash } from 'node:crypto';

/** How long others may hold an answer [s]. */
export type Holding = {
  /** Without asking. */
  readonly fresh: number;
  /** Longer still, while they ask behind the caller's back. */
  readonly stale: number;
};

/**
 * JSON that is the same for all who ask: a browser and whatever stands between share it, and ask by its tag whether it
 * has changed (RFC 9111, RFC 5861). The tag is weak, since a proxy may compress what it names.
 */
export function sharedAnswer(body: Uint8Array<ArrayBuffer>, { fresh, stale }: Holding): Response {
  return new Response(body, {
    headers: {
      'content-type': 'application/json',
      'cache-control': `public, max-age=${Math.max(0, Math.floor(fresh))}, stale-while-revalidate=${stale}`,
      etag: tagOf(body),
    },
  });
}

export function tagOf(body: Uint8Array): string {
  return `W/"${createHash('sha256').update(body).digest('base64url').slice(0, 22)}"`;
}

/** The same answer without its body where the caller has it already (RFC 9110, section 13.1.2). */
export function unlessKnown(request: Request, answer: Response): Response {
  const [known, tag] = [request.headers.get('if-none-match'), answer.headers.get('etag')];
  if (known === null || tag === null || answer.status !== 200 || request.method !== 'GET') return answer;
  const opaque = (text: string): string => text.trim().replace(/^W\//, '');
  const knows = known.trim() === '*' || known.split(',').some((one) => opaque(one) === opaque(tag));
  if (!knows) return answer;
  const headers = new Headers(answer.headers);
  headers.delete('content-type');
  return new Response(null, { status: 304, headers });
}
