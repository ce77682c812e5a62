import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ANSWERS, BOARD, type Job, LIVE } from '@/app/api/_planning/jobs';
import { createThreads, type Threads } from '@/app/api/_planning/threads';
import { boardStarts } from '@/lib/board/starts';
import { boardPostSchema } from '@/lib/contract/board';
import { planRequestSchema } from '@/lib/contract/plan-request';
import { seriesFromJson } from '@/lib/contract/series-from-json';
import { expectOk } from '@/lib/result/result';
import { calendarText } from '@/lib/share/calendar';
import { sharedSeries } from '@/lib/share/night-requests';
import { addMinutes, instant } from '@/lib/time/instant';
import { METRIC_UNITS } from '@/lib/units/choice';
import { NIGHT, night, withMachine } from '@/tests/api/night';
import { acceptedEvening, SHARED_AT, sharedEvening } from '@/tests/support/shared-evening';
import { ROOT } from '@/tests/support/source-tree';

const folder = mkdtempSync(join(tmpdir(), 'threads-'));
let file = '';

beforeAll(async () => {
  // As the build bundles it.
  await build({
    entryPoints: { thread: join(ROOT, 'app/api/_planning/thread.ts') },
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'silent',
  });
  file = join(folder, 'thread.mjs');
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const seconds = (): number => performance.now() / 1000;
const turn = (caller: string, cost = 1) => ({ caller, cost });

async function withThreads<R>(
  options: { readonly file?: string; readonly count?: number },
  use: (threads: Threads) => Promise<R>,
): Promise<R> {
  const threads = createThreads({ file: options.file ?? file, count: options.count ?? 1, seconds });
  try {
    return await use(threads);
  } finally {
    await threads.close();
  }
}

type Answers = Parameters<typeof ANSWERS.work>;

function answersOf(body: ReturnType<typeof night>): Answers {
  const read = planRequestSchema.parse(body);
  const { event } = read;
  const voice = {
    zone: event.timezone,
    now: instant(Date.parse('2027-01-17T00:00:00Z')),
    units: METRIC_UNITS,
    ride: event.ride,
    runNames: event.runs.map(({ name }) => name),
  };
  const series = expectOk(seriesFromJson(read.hours ?? [], event.elevationM));
  return [read, { series, clock: voice.now, voice, warnings: [{ code: 'said', message: 'Said.' }] }];
}

describe('planning in a thread', () => {
  const bodies = {
    'one machine': night(),
    'a club': night({
      machine: undefined,
      machines: [1, 2, 3].map((i) => ({ machine: { ...NIGHT.machine, name: `${i}` } })),
    }),
    'a rider of one setting': night({ event: { ...NIGHT.event, ride: true } }),
    'what cannot be planned': withMachine({ box: [{ size: 410, count: 1 }] }),
    'what makes no sense': night({ accepted: [{ mains: [410, 410] }] }),
  };

  it.each(Object.entries(bodies))('gives the same as planning in place: %s', async (_, body) => {
    const input = answersOf(body);
    const here = ANSWERS.work(...input);
    const there = await withThreads({}, (threads) => threads.run(ANSWERS, input, turn('a')));
    expect(there).toEqual({ ok: true, value: here });
    expect(JSON.stringify(there)).toBe(JSON.stringify({ ok: true, value: here }));
  });

  it('gives the same calendar of a shared night, hour by hour', async () => {
    await withThreads({}, async (threads) => {
      for (const shared of [sharedEvening(), acceptedEvening()])
        for (const hours of [0, 3, 7, 13]) {
          const clock = addMinutes(SHARED_AT, 60 * hours + 7);
          const { hours: kept } = shared;
          const colder = kept.map((hour) => ({ ...hour, temperatureC: hour.temperatureC - hours / 2 }));
          const series = expectOk(sharedSeries({ ...shared, hours: colder }));
          const input: Parameters<typeof LIVE.work> = [shared, { series, clock }];
          const here = LIVE.work(...input);
          const there = expectOk(await threads.run(LIVE, input, turn('a')));
          expect(there).toEqual(here);
          const { event } = shared;
          const context = {
            clock,
            sharedAt: SHARED_AT,
            swapMinutes: event.swapMinutes,
            voice: { zone: event.timezone, units: METRIC_UNITS, ride: event.ride },
            hours: { from: 'over' },
          } as const;
          const text = (machines: ReturnType<typeof LIVE.work>) =>
            calendarText({ name: event.name, machines: expectOk(machines), context });
          expect(text(there)).toBe(text(here));
        }
    });
  });

  it('gives the same board, message by message, from one planning to the next', async () => {
    const { machine, event, hours } = NIGHT;
    const posted = boardPostSchema.parse({ event, hours, machines: [{ id: 'ada', machine }] });
    const series = expectOk(seriesFromJson(posted.hours, event.elevationM));
    const now = instant(Date.parse('2027-01-17T00:00:00Z'));
    const given = { series, saidBy: null, firstStarts: boardStarts(posted), postedAt: now };
    await withThreads({}, async (threads) => {
      let memory: Parameters<typeof BOARD.work>[1]['memory'] = {};
      for (const hour of [0, 1, 2, 3, 9]) {
        const input: Parameters<typeof BOARD.work> = [
          posted,
          { ...given, memory, now: addMinutes(now, 60 * hour) },
        ];
        const here = BOARD.work(...input);
        const there = expectOk(await threads.run(BOARD, input, turn('boards', BOARD.cost(...input))));
        expect(there).toEqual(here);
        expect(JSON.stringify(there)).toBe(JSON.stringify(here));
        memory = expectOk(here).memory;
      }
      expect(Object.keys(memory)).toEqual(['ada']);
    });
  });

  it('costs more the more there is to do, and next to nothing where nothing can be done', () => {
    const cost = (body: ReturnType<typeof night>) => ANSWERS.cost(...answersOf(body));
    const club = (machines: number) =>
      night({
        machine: undefined,
        machines: Array.from({ length: machines }, () => ({ machine: NIGHT.machine })),
      });
    // Every machine more costs the same.
    const each = cost(club(2)) - cost(club(1));
    expect(each).toBeGreaterThan(0);
    expect(cost(club(100)) - cost(club(1))).toBe(99 * each);
    expect(cost(bodies['what makes no sense'])).toBeLessThan(cost(bodies['one machine']));
    const [shared, given] = [sharedEvening(), { series: null, clock: SHARED_AT }];
    expect(LIVE.cost(shared, given)).toBeGreaterThan(cost(bodies['what makes no sense']));
  });
});

/** A program of a thread that does what its job is called. */
function otherProgram(): string {
  const path = join(folder, 'other.mjs');
  writeFileSync(
    path,
    `import { parentPort } from 'node:worker_threads';
    parentPort.on('message', ({ name, input }) => {
      if (name === 'die') process.exit(3);
      if (name === 'break') return parentPort.postMessage({ done: false, fault: 'TypeError', stack: 'TypeError: x\\n    at f (thread.mjs:1:1)' });
      setTimeout(() => parentPort.postMessage({ done: true, output: input[0] }), 20);
    });`,
  );
  return path;
}

const job = (name: string): Job<[string], string> => ({ name, work: (said) => said, cost: () => 1 });

describe('threads', () => {
  it('go on after one that died or broke; who asked hears of it', async () => {
    await withThreads({ file: otherProgram() }, async (threads) => {
      const [died, broke, fine] = await Promise.allSettled([
        threads.run(job('die'), ['a'], turn('a')),
        threads.run(job('break'), ['b'], turn('a')),
        threads.run(job('say'), ['c'], turn('a')),
      ]);
      expect([died.status, broke.status]).toEqual(['rejected', 'rejected']);
      expect(fine).toEqual({ status: 'fulfilled', value: { ok: true, value: 'c' } });
      if (broke.status === 'rejected') expect(String(broke.reason.stack)).toContain('thread.mjs:1:1');
    });
  });

  it('answer a rider in time while another floods them; the flood is told to wait, the rider is not', async () => {
    await withThreads({ file: otherProgram() }, async (threads) => {
      const order: string[] = [];
      const flood = Array.from({ length: 60 }, async (_, i) => {
        const answer = await threads.run(job('say'), [`flood ${i}`], turn('flood', 6e7));
        if (answer.ok) order.push('flood');
        return answer;
      });
      const rider = await threads.run(job('say'), ['rider'], turn('rider', 1e6));
      expect(rider).toEqual({ ok: true, value: 'rider' });
      // One was in work when the rider came, and one more may have been next.
      expect(order.length).toBeLessThanOrEqual(2);
      const answers = await Promise.all(flood);
      const away = answers.flatMap((answer) => (answer.ok ? [] : [answer.reason]));
      expect(away.length).toBeGreaterThan(30);
      for (const { because, seconds: wait } of away) {
        expect(because).toBe('caller');
        expect(wait).toBeGreaterThanOrEqual(1);
      }
    });
  });

  it('work side by side where there are several', async () => {
    await withThreads({ file: otherProgram(), count: 3 }, async (threads) => {
      const said = ['a', 'b', 'c', 'd'].map((each) => threads.run(job('say'), [each], turn(each)));
      expect(threads.waiting()).toBe(1);
      expect(await Promise.all(said)).toEqual(['a', 'b', 'c', 'd'].map((value) => ({ ok: true, value })));
    });
  });
});
