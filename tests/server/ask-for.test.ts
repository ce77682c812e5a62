import { afterEach, describe, expect, it, vi } from 'vitest';
import * as z from 'zod/mini';
import { askFor } from '@/components/server/ask-for';

const reader = z.strictObject({ answer: z.number() });
const instead = 'Type the hours yourself.';
const ask = (cancel?: AbortSignal) =>
  askFor({ path: '/api/forecast?lat=1', reader, instead, ...(cancel === undefined ? {} : { cancel }) });

/** A server that does this with every question. */
const server = (answer: (signal: AbortSignal) => Promise<Response>) =>
  vi.stubGlobal('fetch', (_: string, { signal }: { signal: AbortSignal }) => answer(signal));
const json = (body: unknown, status = 200) => Promise.resolve(Response.json(body, { status }));

/** Silence, broken only by whoever gives up. */
const silent = (signal: AbortSignal) =>
  new Promise<Response>((_, refuse) => {
    signal.addEventListener('abort', () => refuse(new DOMException('given up', 'AbortError')));
  });

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('a question to our own server', () => {
  it('is answered in its shape', async () => {
    server(() => json({ answer: 4 }));
    expect(await ask()).toEqual({ ok: true, value: { answer: 4 } });
  });

  it('that cannot be put says what to do without it, in the words of who asked', async () => {
    server(() => Promise.reject(new TypeError('no network')));
    expect(await ask()).toEqual({
      ok: false,
      reason: `There is no signal, or the server cannot be reached. ${instead}`,
    });
  });

  it('that is refused passes the reason on', async () => {
    server(() => json({ title: 'Too far ahead', detail: 'No forecast reaches that day yet.' }, 422));
    expect(await ask()).toEqual({ ok: false, reason: 'No forecast reaches that day yet.' });
  });

  it('is not waited for longer than the server itself takes to give up', async () => {
    vi.useFakeTimers();
    server(silent);
    const asked = ask();
    await vi.advanceTimersByTimeAsync(13_000);
    expect(await asked).toEqual({ ok: false, reason: `The server did not answer in time. ${instead}` });
  });

  it('ends at once for whoever does not want the answer any more', async () => {
    server(silent);
    const cancel = new AbortController();
    const asked = ask(cancel.signal);
    cancel.abort();
    expect((await asked).ok).toBe(false);
  });

  it.each([
    ['an answer of another shape', () => json({ other: 1 })],
    ['a page instead of an answer', () => Promise.resolve(new Response('<html>', { status: 200 }))],
    ['an error without a reason', () => json({}, 500)],
  ])('says of %s that it cannot be read', async (_, answer) => {
    server(answer);
    expect(await ask()).toEqual({ ok: false, reason: `The server sent something unreadable. ${instead}` });
  });
});
