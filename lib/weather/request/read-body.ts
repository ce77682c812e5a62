import { fail, ok, type Result } from '@/lib/result/result';

/**
 * Reads a body as text and stops, with the connection closed, as soon as it is larger than allowed or the signal comes.
 * It may never settle: a reader of a body that is not compressed as its header says hangs and hears no signal. Whoever
 * waits for this must have a timer of their own.
 */
export async function readBody(
  response: Response,
  mostBytes: number,
  signal: AbortSignal,
): Promise<Result<string, 'too-large'>> {
  const reader = response.body?.getReader();
  if (reader === undefined) return ok('');
  const unwanted = (): void => stop(reader);
  signal.addEventListener('abort', unwanted);
  try {
    return await readWhole(reader, response, mostBytes);
  } finally {
    signal.removeEventListener('abort', unwanted);
  }
}

async function readWhole(
  reader: ReadableStreamDefaultReader<Uint8Array>,
  response: Response,
  mostBytes: number,
): Promise<Result<string, 'too-large'>> {
  if (Number(response.headers.get('content-length') ?? 0) > mostBytes) {
    stop(reader);
    return fail('too-large');
  }
  const decoder = new TextDecoder();
  let text = '';
  let bytes = 0;
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    bytes += part.value.byteLength;
    if (bytes > mostBytes) {
      stop(reader);
      return fail('too-large');
    }
    text += decoder.decode(part.value, { stream: true });
  }
  return ok(text + decoder.decode());
}

/** Says that no more is wanted, and does not wait for the other side to hear it: it may never. */
function stop(reader: ReadableStreamDefaultReader<Uint8Array>): void {
  reader.cancel().catch(() => undefined);
}
