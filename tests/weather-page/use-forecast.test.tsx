// @vitest-environment jsdom
import { act, screen } from '@testing-library/react';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { useNow } from '@/components/store/use-now';
import { useForecast } from '@/components/weather/use-forecast';
import type { EventRecord, Stored } from '@/lib/store/records';
import { type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { followedDemo } from '@/tests/support/followed-demo';
import '@/lib/weather/forecast-json';
import { roomOnStore } from '@/tests/support/room-on-store';
import { forecastAnswer, NOON } from './forecast-answer';

const SECOND_MS = 1000;
const AT_FIRST = instant(NOON + 5 * 60 * MINUTE_MS);

beforeEach(() => {
  vi.useFakeTimers({
    now: AT_FIRST,
    toFake: ['Date', 'setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'],
  });
});

const room = roomOnStore();

/** As a page does: drawn anew with every half minute. */
function Page({ event }: { readonly event: Stored<EventRecord> }) {
  const now = useNow();
  return now === null ? null : <Follower event={event} now={now} />;
}

function Follower({ event, now }: { readonly event: Stored<EventRecord>; readonly now: Instant }) {
  const { status, problem } = useForecast(event, now);
  return <p>{`${status}, ${problem?.code ?? 'no problem'}`}</p>;
}

/** Lets time pass, and what no fake clock holds back, such as the loading of a module, have its share of it. */
async function pass(ms: number) {
  const step = 5 * SECOND_MS;
  for (let gone = 0; gone < ms; gone += step)
    await act(async () => {
      await vi.advanceTimersByTimeAsync(Math.min(step, ms - gone));
      for (let turn = 0; turn < 20; turn += 1) await new Promise((done) => setImmediate(done));
    });
}

/** A night that follows a forecast, on a page that is open; `answers` says what each question in turn meets. */
async function follow(answer: (question: number) => Response) {
  const asked: number[] = [];
  vi.stubGlobal('fetch', async () => {
    asked.push(((vi.getMockedSystemTime()?.getTime() ?? Number.NaN) - AT_FIRST) / SECOND_MS);
    return answer(asked.length);
  });
  const place = { name: 'Lake Orvana', latitude: 47.42, longitude: -93.61 };
  const { event } = followedDemo(AT_FIRST);
  const value = { ...event, forecastId: 'f', event: { ...event.event, place } };
  const stored = { id: 'night', revision: 1, value } as Stored<EventRecord>;
  // A database takes as many turns as the machine is busy; here every question is as long as its answer.
  vi.spyOn(room.store, 'get').mockImplementation(
    async (table) => (table === 'events' ? stored : null) as never,
  );
  vi.spyOn(room.store, 'put').mockImplementation(async () => ({ ok: true, value: stored }) as never);
  room.show(<Page event={stored} />);
  await pass(10 * SECOND_MS);
  return asked;
}

const fresh = () => Response.json(forecastAnswer());
const lost = () => {
  throw new TypeError('no line');
};

describe('a night that follows its forecast', () => {
  it('asks again every quarter of an hour, though its page is drawn anew every half minute', async () => {
    const asked = await follow(fresh);
    expect(asked).toHaveLength(1);
    await pass(14 * MINUTE_MS);
    expect(asked).toHaveLength(1);
    await pass(2 * MINUTE_MS);
    expect(asked).toHaveLength(2);
    await pass(30 * MINUTE_MS);
    expect(asked).toHaveLength(4);
    screen.getByText('following, no problem');
  });

  it('asks soon again when a question is lost, and more and more seldom', async () => {
    const asked = await follow((question) => (question === 1 ? fresh() : lost()));
    await pass(15 * MINUTE_MS + 4 * MINUTE_MS);
    const first = asked[1] ?? 0;
    const waits = asked.slice(2).map((at) => at - first);
    expect(waits).toEqual([5, 20, 65, 185].map((at) => expect.closeTo(at, 0)));
    screen.getByText('following, no-signal');
  });

  it('is there within seconds of the signal, though the first question after it is lost too', async () => {
    let line = false;
    const asked = await follow((question) => (question === 1 || line ? fresh() : lost()));
    await pass(30 * MINUTE_MS);
    screen.getByText('following, no-signal');
    const before = asked.length;
    await act(async () => {
      window.dispatchEvent(new Event('online'));
    });
    await pass(1 * SECOND_MS);
    expect(asked).toHaveLength(before + 1);
    line = true;
    await pass(5 * SECOND_MS);
    screen.getByText('following, no problem');
  });

  it('leaves alone for as long as it is asked to', async () => {
    const busy = { type: 'about:blank', title: 'Too Many Requests', status: 429, detail: 'Wait.' };
    const asked = await follow((question) =>
      question === 1 ? Response.json(busy, { status: 429, headers: { 'retry-after': '300' } }) : fresh(),
    );
    await pass(280 * SECOND_MS);
    expect(asked).toHaveLength(1);
    await pass(30 * SECOND_MS);
    expect(asked).toHaveLength(2);
  });
});
