import { fail, ok, type Result } from '@/lib/result/result';
import type { Problem } from './problem';

/** Reads a JSON body of at most `limit` bytes; a larger one is refused while it arrives, not after. */
export async function readJsonBody(request: Request, limit: number): Promise<Result<unknown, Problem>> {
  const type = request.headers.get('content-type') ?? '';
  if (!/^application\/(json|[\w.-]+\+json)\s*(;|$)/i.test(type))
    return fail({ status: 415, detail: 'Send JSON, with content-type: application/json.' });
  const bytes = await readBytes(request, limit);
  return bytes.ok ? parse(bytes.value) : bytes;
}

function tooLarge(limit: number): Problem {
  return { status: 413, detail: `The body is larger than ${limit} bytes. Send less at once.` };
}

async function readBytes(request: Request, limit: number): Promise<Result<Uint8Array, Problem>> {
  if (Number(request.headers.get('content-length') ?? 0) > limit) return fail(tooLarge(limit));
  const reader = request.body?.getReader();
  if (reader === undefined) return ok(new Uint8Array());
  const chunks: Uint8Array[] = [];
  let size = 0;
  try {
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      size += part.value.byteLength;
      if (size > limit) {
        await reader.cancel();
        return fail(tooLarge(limit));
      }
      chunks.push(part.value);
    }
  } catch {
    return fail({ status: 400, detail: 'The body broke off before it was complete. Send it again.' });
  }
  return ok(joined(chunks, size));
}

function joined(chunks: readonly Uint8Array[], size: number): Uint8Array {
  const bytes = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.byteLength;
  }
  return bytes;
}

function parse(bytes: Uint8Array): Result<unknown, Problem> {
  if (bytes.byteLength === 0) return fail({ status: 400, detail: 'The body is empty. Send a JSON object.' });
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return ok(JSON.parse(text));
  } catch {
    return fail({
      status: 400,
      detail:
        'The body is not JSON in UTF-8. NaN and Infinity are no JSON numbers; names need double quotes.',
    });
  }
}
