import { stableHash } from '@/lib/share/stable-hash';

type Sent = {
  readonly text: string;
  readonly type: string;
  readonly file: string;
  /** False: not to be kept, since asking again soon may give a better answer. */
  readonly fresh: boolean;
  readonly ifNoneMatch: string | null;
};

/** A text that is asked for again and again: whoever has it already gets no more than a nod. */
export function sendText({ text, type, file, fresh, ifNoneMatch }: Sent): Response {
  const etag = `"${stableHash(text)}"`;
  const headers = {
    etag,
    // A minute in between spares the server; the rest is for the calendar to decide.
    'cache-control': fresh ? 'private, max-age=60' : 'private, no-cache',
  };
  const known = (ifNoneMatch ?? '').split(',').map((each) => each.trim().replace(/^W\//, ''));
  if (known.includes(etag) || known.includes('*')) return new Response(null, { status: 304, headers });
  return new Response(text, {
    headers: {
      ...headers,
      'content-type': `${type}; charset=utf-8`,
      'content-disposition': `inline; filename="${file}"`,
    },
  });
}
