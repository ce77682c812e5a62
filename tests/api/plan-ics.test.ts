import { beforeAll, describe, expect, test } from 'vitest';
import { handle } from '@/app/api/_http/handle';
import type { LiveDeps } from '@/app/api/_live/live-night';
import { calendarAnswer } from '@/app/api/plan.ics/calendar-answer';
import { GET, POST } from '@/app/api/plan.ics/route';
import { MOST_FEED_CHARACTERS } from '@/lib/share/addresses';
import { type SharedNight, sharedNightSchema } from '@/lib/share/shared-night';
import { addMinutes, HOUR_MS, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { getForecast } from '@/lib/weather/get-forecast';
import { type ReadCalendar, type ReadEvent, readCalendar } from '@/tests/support/calendar';
import { CHANGING_WEATHER_ENVIRONMENT, changingWeather } from '@/tests/support/changing-weather';
import {
  acceptedEvening,
  CLOCKS_GO_BACK,
  FALL_PER_HOUR,
  payloadOf,
  ROUNDS,
  roundStart,
  SHARED_AT,
  START_C,
  SWAP_MINUTES,
  sharedEvening,
} from '@/tests/support/shared-evening';
import { BRISK_TIMINGS, weatherDeps } from '@/tests/support/weather-deps';
import { problemOf } from './ask';

/** Kelvin against what was known when the night was shared, hour by hour; null: no service answers. */
const EVENING = [0, 0, -1, -2.5, null, null, -4, -6, 2, 5, null, -3, -5, -1, 0, null];

function weather(shiftByHour: readonly (number | null)[] = EVENING) {
  return changingWeather({ from: SHARED_AT, startC: START_C, fallPerHour: FALL_PER_HOUR, shiftByHour });
}

/** A server of its own, with a memory of its own, under a clock it shares with the others. */
function instance(service: ReturnType<typeof weather>, clock: () => Instant) {
  const deps = weatherDeps({
    fetch: service.fetch,
    now: clock,
    environment: () => CHANGING_WEATHER_ENVIRONMENT,
    timings: {
      ...BRISK_TIMINGS,
      attemptMs: 500,
      totalMs: 600,
      hedgeMs: 50,
      staleGraceMs: 100,
      spreadGraceMs: 10,
    },
  });
  const live: LiveDeps = { fetchForecast: (question) => getForecast(question, deps), now: clock };
  return (night: SharedNight, headers: Record<string, string> = {}) => {
    const request = new Request(`http://localhost/api/plan.ics?d=${payloadOf(night)}`, { headers });
    return handle(request, () => calendarAnswer(request, live));
  };
}

/** Instances under one clock that is moved by hand. */
function evening(shiftByHour?: readonly (number | null)[]) {
  let at = SHARED_AT;
  const service = weather(shiftByHour);
  return {
    issueAt: service.issueAt,
    go: (to: Instant) => {
      at = to;
      service.setNow(to);
    },
    newInstance: () => instance(service, () => at),
  };
}

const POLLS = 50;
/** From sharing to after the last round, at moments that fall on no round number. */
const pollAt = (i: number): Instant =>
  instant(SHARED_AT + 7 * MINUTE_MS + Math.round((i * 14.2 * HOUR_MS) / (POLLS - 1)));
const byUid = ({ events }: ReadCalendar, uid: string): ReadEvent | undefined =>
  events.find((event) => event.uid === uid);

async function textOf(response: Response): Promise<string> {
  const text = await response.text();
  if (response.status !== 200) throw new Error(`${response.status}: ${text}`);
  return text;
}

/** The night polled 50 times, each time at the other of two instances. */
async function pollInTurn(night: SharedNight) {
  const scene = evening();
  const instances = [scene.newInstance(), scene.newInstance()];
  const polls: { readonly at: Instant; readonly calendar: ReadCalendar }[] = [];
  for (let i = 0; i < POLLS; i++) {
    scene.go(pollAt(i));
    polls.push({ at: pollAt(i), calendar: readCalendar(await textOf(await instances[i % 2]!(night))) });
  }
  return polls;
}

describe('A calendar polled 50 times over an evening of changing and failing forecasts, at two instances in turn', () => {
  let polls: Awaited<ReturnType<typeof pollInTurn>> = [];
  let uids: readonly string[] = [];
  let accepted: readonly string[] = [];
  beforeAll(async () => {
    polls = await pollInTurn(acceptedEvening());
    uids = [...new Set(polls.flatMap(({ calendar }) => calendar.events.map(({ uid }) => uid)))];
    accepted = polls[0]!.calendar.events.map(({ uid }) => uid);
  });

  test('is an evening in which the plan moved, and a swap was called off and called for again', () => {
    const starts = new Set(polls.map(({ calendar }) => byUid(calendar, accepted[1]!)?.start));
    expect(starts.size).toBeGreaterThan(1);
    const stati = new Set(polls.map(({ calendar }) => byUid(calendar, accepted[1]!)?.status));
    expect([...stati].sort()).toEqual(['CANCELLED', 'CONFIRMED']);
    expect(uids.length).toBeGreaterThan(accepted.length);
  });

  test('names every act once, and those of the accepted plan in every poll by the same UID', () => {
    for (const { calendar } of polls) {
      const found = calendar.events.map(({ uid }) => uid);
      expect(new Set(found).size).toBe(found.length);
      expect(accepted.filter((uid) => !found.includes(uid))).toEqual([]);
    }
  });

  test('never lets a SEQUENCE or a DTSTAMP fall', () => {
    const fallen = uids.flatMap((uid) => {
      const seen = polls.flatMap(({ calendar }) => byUid(calendar, uid) ?? []);
      return seen.filter(
        (event, i) => i > 0 && (event.sequence < seen[i - 1]!.sequence || event.stamp < seen[i - 1]!.stamp),
      );
    });
    expect(fallen).toEqual([]);
  });

  test('raises the SEQUENCE with everything that changes from one quarter of an hour to the next', () => {
    const quarter = (at: number) => Math.floor(at / (15 * MINUTE_MS));
    const unraised = uids.flatMap((uid) =>
      polls.slice(1).filter(({ at, calendar }, i) => {
        const [before, after] = [byUid(polls[i]!.calendar, uid), byUid(calendar, uid)];
        return (
          before !== undefined &&
          after !== undefined &&
          before.text !== after.text &&
          quarter(at) > quarter(polls[i]!.at) &&
          after.sequence <= before.sequence
        );
      }),
    );
    expect(unraised).toEqual([]);
  });

  test('leaves what is past untouched to the last byte', () => {
    let past = 0;
    for (const [i, { at, calendar }] of polls.entries()) {
      for (const event of calendar.events.filter(({ end }) => end <= at)) {
        past += 1;
        const later = polls.slice(i).map((poll) => byUid(poll.calendar, event.uid)?.text);
        expect(new Set(later)).toEqual(new Set([event.text]));
      }
    }
    expect(past).toBeGreaterThan(20);
  });

  test('says why it goes by older hours while no service answers', () => {
    const told = polls.map(({ calendar }) =>
      calendar.events.map(({ description }) => description).join('\n'),
    );
    expect(told.some((text) => text.includes('No weather service answers now'))).toBe(true);
    expect(told.some((text) => text.includes('Weather data by Open-Meteo.com'))).toBe(true);
  });

  test('says against the accepted plan what moved and why', () => {
    const told = polls.flatMap(({ calendar }) => calendar.events.map(({ description }) => description));
    const moved = told.find((text) => /moved from \d\d:\d\d .*colder/.test(text.replaceAll('\u00a0', ' ')));
    expect(moved).toContain('Against the accepted plan: The swap to');
    expect(moved).toContain('share the night again');
  });
});

describe('Two instances polled at the same moments', () => {
  test('answer with the same bytes and the same ETag for the same forecast', async () => {
    const scene = evening();
    const [first, second] = [scene.newInstance(), scene.newInstance()];
    const night = acceptedEvening();
    const seen = new Set<string>();
    for (let i = 0; i < 25; i++) {
      scene.go(pollAt(2 * i));
      const [a, b] = [await first(night), await second(night)];
      expect(a.headers.get('etag')).toBe(b.headers.get('etag'));
      const text = await textOf(a);
      expect(text).toBe(await textOf(b));
      seen.add(text);
    }
    expect(seen.size).toBeGreaterThan(15);
  });

  test('answer alike though one fetched its forecast minutes before the other', async () => {
    const scene = evening([-3]);
    const [first, second] = [scene.newInstance(), scene.newInstance()];
    const night = acceptedEvening();
    scene.go(addMinutes(SHARED_AT, 121));
    await first(night);
    scene.go(addMinutes(SHARED_AT, 131));
    expect(await textOf(await first(night))).toBe(await textOf(await second(night)));
  });
});

describe('A calendar without a forecast', () => {
  const down = [null];

  test('goes by the last good forecast, and says how old it is', async () => {
    const scene = evening([-4, null]);
    const poll = scene.newInstance();
    const night = acceptedEvening();
    scene.go(addMinutes(SHARED_AT, 20));
    const before = readCalendar(await textOf(await poll(night)));
    scene.go(addMinutes(SHARED_AT, 80));
    const after = readCalendar(await textOf(await poll(night)));
    expect(after.events.map(({ start, summary }) => [start, summary])).toEqual(
      before.events.map(({ start, summary }) => [start, summary]),
    );
    expect(after.events[0]!.description).toContain('the answer of 2026-10-31 15:20 is used');
  });

  test('goes by the hours in the link where there never was one', async () => {
    const scene = evening(down);
    scene.go(addMinutes(SHARED_AT, 20));
    const [start] = readCalendar(await textOf(await scene.newInstance()(acceptedEvening()))).events;
    expect(start!.description).toContain(
      'No weather service answers now. Take a reading at the track. This goes by the hours shared with the night at 2026-10-31 15:00.',
    );
  });

  test('goes by the accepted plan itself where the link carries no hours', async () => {
    const scene = evening(down);
    scene.go(addMinutes(SHARED_AT, 20));
    const night = { ...acceptedEvening(), hours: [] };
    const calendar = readCalendar(await textOf(await scene.newInstance()(night)));
    expect(calendar.events.map(({ summary }) => summary)).toEqual([
      'Put in 410 420 before Round 1',
      'Put in 420 430 before Round 5',
    ]);
    for (const { description } of calendar.events)
      expect(description).toContain('this is the accepted plan as it stood at 2026-10-31 15:00');
  });

  test('with nothing at all to go by is refused with when to come back', async () => {
    const scene = evening(down);
    const response = await scene.newInstance()({ ...sharedEvening(), hours: [] });
    expect(Number(response.headers.get('retry-after'))).toBeGreaterThan(0);
    expect(await problemOf(response)).toMatchObject({ status: 503 });
  });

  test('does not put a forecast in the place of hours a person typed', async () => {
    const scene = evening([-9]);
    scene.go(addMinutes(SHARED_AT, 20));
    const night = acceptedEvening({ hoursTyped: true });
    const [start] = readCalendar(await textOf(await scene.newInstance()(night))).events;
    expect(start!.summary).toBe('Put in 410 420 before Round 1');
    expect(start!.description).toContain('The hours were typed');
  });
});

describe('A calendar as an outside reader understands it', () => {
  let text = '';
  let type: string | null = null;
  let calendar: ReadCalendar = readCalendar('BEGIN:VCALENDAR\r\nEND:VCALENDAR');
  beforeAll(async () => {
    const scene = evening([-3]);
    scene.go(addMinutes(SHARED_AT, 20));
    const response = await scene.newInstance()(acceptedEvening());
    type = response.headers.get('content-type');
    text = await textOf(response);
    calendar = readCalendar(text);
  });

  test('is sent as a calendar, to be asked for again in a quarter of an hour', () => {
    expect(type).toBe('text/calendar; charset=utf-8');
    expect([calendar.method, calendar.refresh]).toEqual(['PUBLISH', 'PT15M']);
  });

  test('ends every act at the start of its round, on both sides of the clocks going back', () => {
    const rounds = Array.from({ length: ROUNDS }, (_, i) => roundStart(i));
    const ends = calendar.events.map(({ end }) => end);
    expect(ends.filter((end) => !rounds.includes(instant(end)))).toEqual([]);
    expect(ends.some((end) => end < CLOCKS_GO_BACK) && ends.some((end) => end > CLOCKS_GO_BACK)).toBe(true);
  });

  test('begins every act between two rounds where the round before ends', () => {
    const swaps = calendar.events.slice(1).filter(({ status }) => status === 'CONFIRMED');
    expect(swaps.length).toBeGreaterThan(0);
    for (const { start, end } of swaps) expect(start).toBe(end - HOUR_MS + 10 * MINUTE_MS);
  });

  test('rings a quarter of an hour before, and when it is time to begin at the latest', () => {
    for (const { start, end, alarms } of calendar.events.filter(({ status }) => status === 'CONFIRMED'))
      expect(alarms).toEqual([
        { action: 'DISPLAY', at: start - 15 * MINUTE_MS },
        { action: 'DISPLAY', at: end - SWAP_MINUTES * MINUTE_MS },
      ]);
    const cancelled = calendar.events.filter(({ status }) => status === 'CANCELLED');
    expect(cancelled.flatMap(({ alarms }) => alarms)).toEqual([]);
  });

  test('keeps every line within 75 octets and ends it with CR LF (RFC 5545, 3.1)', () => {
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const longest = Math.max(...text.split('\r\n').map((line) => Buffer.byteLength(line)));
    expect(longest).toBeLessThanOrEqual(75);
    expect(text).not.toContain('\ufffd');
  });

  test('gives names back as they were typed, whatever is in them', () => {
    expect(calendar.name).toBe(acceptedEvening().event.name);
  });

  test('lets no name add a line of its own', async () => {
    const night = acceptedEvening();
    const nasty = 'Ice\r\nBEGIN:VEVENT\u0007; \\n, "x"';
    const scene = evening([0]);
    const event = {
      ...night.event,
      name: nasty,
      runs: night.event.runs.map((run) => ({ ...run, name: nasty })),
    };
    const machines = night.machines.map((each) => ({ ...each, machine: { ...each.machine, name: nasty } }));
    const read = readCalendar(await textOf(await scene.newInstance()({ ...night, event, machines })));
    expect(read.name).toBe('Ice BEGIN:VEVENT ; \\n, "x"');
    expect(read.events[0]!.summary).toBe('Put in 410 420 before Ice BEGIN:VEVENT ; \\n, "x"');
  });

  test('tells several racers apart, also two of one name', async () => {
    const night = acceptedEvening();
    const scene = evening([0]);
    const machines = [...night.machines, ...night.machines];
    const read = readCalendar(await textOf(await scene.newInstance()({ ...night, machines })));
    expect(read.events.length).toBe(4);
    expect(new Set(read.events.map(({ uid }) => uid)).size).toBe(4);
    expect(read.events[0]!.summary).toBe('Twin: Put in 410 420 before Round 1');
  });
});

describe('GET /api/plan.ics', () => {
  const ask = (query: string) => GET(new Request(`http://localhost/api/plan.ics${query}`));

  test('answers 304 to whoever has the answer already', async () => {
    const scene = evening([0]);
    const poll = scene.newInstance();
    const night = acceptedEvening();
    const etag = (await poll(night)).headers.get('etag') ?? '';
    const again = await poll(night, { 'if-none-match': `"x", W/${etag}` });
    expect([again.status, await again.text()]).toEqual([304, '']);
    expect((await poll(night, { 'if-none-match': '"x"' })).status).toBe(200);
  });

  test('refuses a payload that is none, in words', async () => {
    for (const query of ['', '?d=', '?d=1abc', '?d=7abc', `?d=${payloadOf(acceptedEvening()).slice(0, -3)}`])
      expect(await problemOf(await ask(query))).toMatchObject({ status: 400 });
    expect((await problemOf(await ask('?d=7abc'))).detail).toContain('newer version');
  });

  test('refuses an address that is too long', async () => {
    expect((await problemOf(await ask(`?d=1${'A'.repeat(MOST_FEED_CHARACTERS)}`))).status).toBe(414);
  });

  test('names what makes no sense in a night that is whole', async () => {
    const night = acceptedEvening();
    const [machine] = night.machines;
    const odd = sharedNightSchema.parse({ ...night, machines: [{ ...machine, fitted: { mains: [400] } }] });
    const problem = await problemOf(await ask(`?d=${payloadOf(odd)}`));
    expect(problem).toMatchObject({ status: 422 });
    expect(problem.errors?.[0]?.path).toBe('machines[0].fitted.mains');
    const empty = {
      ...night,
      event: { ...night.event, runs: [] },
      machines: [{ machine: machine!.machine }],
    };
    expect((await problemOf(await ask(`?d=${payloadOf(empty)}`))).detail).toContain('no run to plan for');
  });

  test('asks no service once every round is past', async () => {
    const scene = evening([null]);
    const poll = scene.newInstance();
    scene.go(roundStart(ROUNDS));
    const response = await poll(acceptedEvening());
    expect(response.headers.get('cache-control')).toContain('max-age');
    expect(readCalendar(await textOf(response)).events.length).toBe(2);
  });

  test('takes nothing but GET', async () => {
    expect((await problemOf(POST())).status).toBe(405);
  });
});
