import { getEventListeners } from 'node:events';
import { HttpResponse, http } from 'msw';
import { setupServer } from 'msw/node';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { type Ask, ask } from '@/lib/weather/request/ask';
import { MOST_BYTES } from '@/lib/weather/request/timings';
import { BRISK_TIMINGS, EVENING, handClock, weatherDeps } from '@/tests/support/weather-deps';

const URL_ = 'https://weather.example/v1';
const server = setupServer();
beforeAll(() => server.listen({ onUnhandledRequest: 'error' }));
afterEach(() => server.resetHandlers());
afterAll(() => server.close());

const question = (more: Partial<Ask> = {}): Ask => ({
  host: 'weatherGov',
  url: URL_,
  deadline: new AbortController().signal,
  ...more,
});

/** Answers with each in turn, the last one for ever, and counts. */
function inTurn(...answers: readonly (() => Response)[]): { count: () => number } {
  let asked = 0;
  server.use(
    http.get(URL_, () => {
      const answer = answers[Math.min(asked, answers.length - 1)]!;
      asked += 1;
      return answer();
    }),
  );
  return { count: () => asked };
}

const good = () => HttpResponse.json({ fine: true });
const status =
  (code: number, headers: Record<string, string> = {}) =>
  () =>
    HttpResponse.json({}, { status: code, headers });

describe('a question to a service', () => {
  it('comes back as unread JSON with what the service says about asking again', async () => {
    inTurn(() =>
      HttpResponse.json(
        { fine: true },
        { headers: { expires: 'Sat, 16 Jan 2027 22:42:00 GMT', 'last-modified': 'x' } },
      ),
    );
    expect(await ask(question(), weatherDeps({ timings: BRISK_TIMINGS }))).toEqual({
      ok: true,
      value: {
        kind: 'body',
        json: { fine: true },
        validity: { expires: Date.UTC(2027, 0, 16, 22, 42), lastModified: 'x' },
      },
    });
  });

  // A server asks all day: Node keeps a signal made of others, and all it leads to, as long as somebody listens to it.
  it.each([
    ['is answered', () => HttpResponse.json({ fine: true })],
    ['is answered with too much', () => new HttpResponse('x'.repeat(MOST_BYTES + 1))],
    ['is refused', () => HttpResponse.json({}, { status: 404 })],
  ])('leaves nobody listening once it %s', async (_, answer) => {
    const signals: AbortSignal[] = [];
    const seen = vi.fn<typeof fetch>(async (_url, init) => {
      signals.push(init?.signal as AbortSignal);
      return answer();
    });
    const asked = question();
    await ask(asked, weatherDeps({ timings: BRISK_TIMINGS, fetch: seen }));
    expect(signals.length).toBeGreaterThan(0);
    for (const signal of [asked.deadline, ...signals]) expect(getEventListeners(signal, 'abort')).toEqual([]);
  });

  it('goes out with its headers and follows no redirect', async () => {
    const seen = vi.fn<typeof fetch>(async () => HttpResponse.json({}));
    await ask(
      question({ headers: { 'user-agent': 'heavy-air/1 tests@example.org' } }),
      weatherDeps({ fetch: seen }),
    );
    expect(seen.mock.calls[0]![1]).toMatchObject({
      redirect: 'manual',
      cache: 'no-store',
      headers: { accept: 'application/json', 'user-agent': 'heavy-air/1 tests@example.org' },
    });
  });

  it.each([301, 302, 303, 307, 308])('is not sent on by a %d', async (code) => {
    inTurn(status(code, { location: 'https://elsewhere.example/' }));
    expect(await ask(question(), weatherDeps())).toEqual({ ok: false, reason: { code: 'redirected' } });
  });

  it('is given a second chance after a 500, and only one', async () => {
    const once = inTurn(status(500), good);
    expectOk(await ask(question(), weatherDeps({ timings: BRISK_TIMINGS })));
    expect(once.count()).toBe(2);
    const twice = inTurn(status(500), status(502), good);
    expect(await ask(question(), weatherDeps({ timings: BRISK_TIMINGS }))).toEqual({
      ok: false,
      reason: { code: 'bad-status', status: 502 },
    });
    expect(twice.count()).toBe(2);
  });

  it.each([400, 401, 403, 404, 422])('is not repeated after a %d', async (code) => {
    const answers = inTurn(status(code));
    expect(await ask(question(), weatherDeps())).toMatchObject({
      reason: { code: 'bad-status', status: code },
    });
    expect(answers.count()).toBe(1);
  });

  it('waits as long as Retry-After says where that is soon, and a random bit more', async () => {
    vi.useFakeTimers();
    const answers = inTurn(status(429, { 'retry-after': '1' }), good);
    const answer = ask(question(), weatherDeps({ random: () => 0.5 }));
    await vi.advanceTimersByTimeAsync(1100);
    expect(answers.count()).toBe(1);
    await vi.advanceTimersByTimeAsync(100);
    vi.useRealTimers();
    expectOk(await answer);
    expect(answers.count()).toBe(2);
  });

  it('is not repeated where Retry-After is far off, nor asked again before it', async () => {
    const answers = inTurn(status(503, { 'retry-after': '60' }), good);
    const clock = handClock();
    const deps = weatherDeps({ now: clock.now });
    const refused = { ok: false, reason: { code: 'rate-limited', until: EVENING + 60_000 } };
    expect(await ask(question(), deps)).toEqual(refused);
    clock.forward(59_999);
    expect(await ask(question(), deps)).toEqual(refused);
    expect(answers.count()).toBe(1);
    clock.forward(1);
    expectOk(await ask(question(), deps));
  });

  it('knows a limit by its words where the status is 400', async () => {
    inTurn(() => HttpResponse.json({ error: true, reason: 'Too many concurrent requests' }, { status: 400 }));
    expect(await ask(question(), weatherDeps({ timings: BRISK_TIMINGS }))).toMatchObject({
      reason: { code: 'rate-limited' },
    });
  });

  it('takes an answer of just the most bytes, and not one more', async () => {
    const text = (length: number) => () => new HttpResponse(`"${'x'.repeat(length - 2)}"`);
    inTurn(text(MOST_BYTES));
    expect((await ask(question(), weatherDeps())).ok).toBe(true);
    inTurn(text(MOST_BYTES + 1));
    expect(await ask(question(), weatherDeps())).toEqual({ ok: false, reason: { code: 'too-large' } });
  });

  it('does not start reading what says it is too large', async () => {
    const cancelled = vi.fn();
    inTurn(
      () =>
        new HttpResponse(new ReadableStream({ cancel: cancelled }), {
          headers: { 'content-length': '100000000' },
        }),
    );
    expect(await ask(question(), weatherDeps())).toEqual({ ok: false, reason: { code: 'too-large' } });
  });

  it('takes an empty body for unreadable', async () => {
    inTurn(() => new HttpResponse(null, { status: 200 }));
    expect(await ask(question(), weatherDeps())).toEqual({ ok: false, reason: { code: 'not-json' } });
  });

  it('that waited in line behind three failures is not asked any more', async () => {
    const answers = inTurn(status(404), status(500));
    const deps = weatherDeps({ timings: BRISK_TIMINGS });
    const all = await Promise.all(
      Array.from({ length: 6 }, () => ask(question({ host: 'openMeteo' }), deps)),
    );
    expect(all.map((answer) => (answer.ok ? 'ok' : answer.reason.code))).toEqual([
      'bad-status',
      'bad-status',
      'bad-status',
      'bad-status',
      'resting',
      'resting',
    ]);
    // One for the 404, two for each of three failures.
    expect(answers.count()).toBe(7);
  });

  it('whose time is up before its turn says that we are busy, and holds nothing against the service', async () => {
    const over = new AbortController();
    over.abort();
    const deps = weatherDeps();
    expect(await ask(question({ deadline: over.signal }), deps)).toEqual({
      ok: false,
      reason: { code: 'busy' },
    });
    expect(deps.memory.breakers.size).toBe(0);
  });
});
