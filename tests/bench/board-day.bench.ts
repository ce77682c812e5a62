// A day of boards in some minutes: does a server hold more and more?
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { NIGHT } from '@/tests/api/night';
import { startFakeWeather } from '@/tests/support/fake-weather/server';
import { HAS_POSTGRES, startPostgres } from '@/tests/support/postgres';
import { startPushService } from '@/tests/support/push-service';
import { ROOT } from '@/tests/support/source-tree';
import { type Ask, asker, lookAt, nightFrom, type PostedBoard, post, steadily } from './board-crowd';
import { type BuiltApp, startBuiltApp } from './built-app';
import { tell } from './outcome';
import { straightLine } from './straight-line';

// BOARD_BENCH=short tries the bench itself: the figures are then of no use.
const SHORT = process.env.BOARD_BENCH === 'short';
const BOARDS = SHORT ? 3 : 20;
const HOURS = SHORT ? 6 : 24;
/** A day in ten minutes. */
const SPEED = SHORT ? 720 : 144;
/** A run every so many hours. */
const RUN_HOURS = 3;
const LOOKS_PER_SECOND = 20;
const ACTS_PER_SECOND = 4;
/** Until then code is compiled and what is loaded at first need comes: left out of the line [simulated hours]. */
const SETTLED_HOURS = HOURS / 4;
/** What a day may add at most, its doubt counted in. Judgement: a leak of a look or a plan would be ten times that. */
const MOST_GROWTH_MB = 8;
const REAL_SECONDS = (HOURS * 3600) / SPEED;

type Held = { readonly heapUsed: number; readonly external: number; readonly rss: number };
type Sample = Held & { readonly hour: number };

type World = {
  readonly app: BuiltApp;
  readonly boards: readonly PostedBoard[];
  readonly ask: Ask;
  readonly held: string;
  readonly etags: Map<string, string>;
  readonly seen: Set<string>;
  /** A phone's subscription, the same each time. */
  readonly phone: (name: string) => object;
};

/** What the server holds once its garbage is gone. */
async function holds({ app, held }: World): Promise<Held> {
  rmSync(held, { force: true });
  process.kill(app.pid, 'SIGUSR2');
  for (let tries = 0; tries < 400; tries += 1) {
    await new Promise((done) => setTimeout(done, 50));
    const text = await Promise.resolve()
      .then(() => readFileSync(held, 'utf8'))
      .catch(() => '');
    if (text !== '') return JSON.parse(text);
  }
  throw new Error('the server does not say what it holds');
}

async function look({ ask, etags, seen, boards }: World, i: number): Promise<void> {
  const board = boards[i % boards.length]!;
  // Every other one comes for the first time.
  const answer = await ask(lookAt(board, i % 2 === 0 ? '' : etags.get(board.id)));
  if (answer.status !== 200 && answer.status !== 304) throw new Error(`a follower got ${answer.status}`);
  if (answer.status === 200) etags.set(board.id, answer.etag);
  seen.add(answer.etag);
}

const JSON_TYPE = { 'content-type': 'application/json' };

/** What people do at boards beside looking, in turn: each act with the status it must be answered with. */
const ACTS: readonly ((world: World, i: number) => Promise<void>)[] = [
  async ({ ask, boards }, i) => {
    const { id, followSecret } = boards[i % boards.length]!;
    const setting = { mains: [i % 2 === 0 ? 410 : 420] };
    await must(ask, 200, {
      method: 'POST',
      path: `/api/boards/${id}/done`,
      headers: { ...JSON_TYPE, authorization: `Bearer ${followSecret}` },
      body: JSON.stringify({ machine: 'ada', setting }),
    });
  },
  async ({ ask }) => {
    const body = JSON.stringify({ ...NIGHT, now: '2027-01-16T18:00:00-06:00' });
    await must(ask, 200, { method: 'POST', path: '/api/plan', headers: JSON_TYPE, body });
  },
  async ({ ask, boards, phone }, i) => {
    const { id, followSecret } = boards[i % boards.length]!;
    const subscription = phone(`phone-${i % (2 * boards.length)}`);
    await must(ask, 204, {
      method: 'PUT',
      path: `/api/boards/${id}/subscriptions`,
      headers: { ...JSON_TYPE, authorization: `Bearer ${followSecret}` },
      body: JSON.stringify({ subscription, machines: ['ada'] }),
    });
  },
  async ({ ask, boards }, i) => {
    const { id, keepSecret } = boards[i % boards.length]!;
    const authorization = `Bearer ${keepSecret}`;
    const read = await must(ask, 200, { path: `/api/boards/${id}`, headers: { authorization } });
    const { night } = JSON.parse(read.text);
    await must(ask, [200, 412], {
      method: 'PATCH',
      path: `/api/boards/${id}`,
      headers: { ...JSON_TYPE, authorization, 'if-match': read.etag },
      body: JSON.stringify({ event: { ...night.event, name: `Night ${i}` } }),
    });
  },
  async ({ ask, app }, i) => {
    const [board] = await post(app.url, 1, () => nightFrom(virtualNow(), 6), i % 1000);
    const authorization = `Bearer ${board!.keepSecret}`;
    await must(ask, 204, { method: 'DELETE', path: `/api/boards/${board!.id}`, headers: { authorization } });
    await must(ask, [404, 429], lookAt(board!));
  },
];

async function must(ask: Ask, status: number | readonly number[], asked: Parameters<Ask>[0]) {
  const answer = await ask(asked);
  if (![status].flat().includes(answer.status))
    throw new Error(`${asked.method ?? 'GET'} got ${answer.status} ${answer.text.slice(0, 200)}`);
  return answer;
}

const BEGAN = Date.now();
const virtualNow = (): number => BEGAN + (Date.now() - BEGAN) * SPEED;

async function day(world: World): Promise<readonly Sample[]> {
  const start = virtualNow();
  const samples: Sample[] = [];
  const hours = async (): Promise<void> => {
    for (let hour = 1; hour <= HOURS; hour += 1) {
      const wait = start + hour * 3_600_000 - virtualNow();
      await new Promise((done) => setTimeout(done, Math.max(0, wait) / SPEED));
      samples.push({ ...(await holds(world)), hour: (virtualNow() - start) / 3_600_000 });
    }
  };
  await Promise.all([
    steadily(LOOKS_PER_SECOND, REAL_SECONDS, (i) => look(world, i)),
    steadily(ACTS_PER_SECOND, REAL_SECONDS, (i) =>
      ACTS[i % ACTS.length]!(world, Math.floor(i / ACTS.length)),
    ),
    hours(),
  ]);
  return samples;
}

/** How far behind the clock the board is that was planned longest ago [simulated minutes]. */
async function oldestPlan({ ask, boards }: World): Promise<number> {
  const ages: number[] = [];
  for (const board of boards) {
    const { text } = await must(ask, 200, lookAt(board));
    ages.push((virtualNow() - Date.parse(JSON.parse(text).plannedAt)) / 60_000);
  }
  return Math.max(...ages);
}

function tellDay(engine: string, samples: readonly Sample[], { seen }: World): void {
  const settled = samples.filter(({ hour }) => hour > SETTLED_HOURS);
  const last = samples.at(-1)!;
  for (const [what, of, most] of [
    ['heap once the garbage is gone', ({ heapUsed, external }: Held) => heapUsed + external, MOST_GROWTH_MB],
    ['resident memory', ({ rss }: Held) => rss, null],
  ] as const) {
    const line = straightLine(settled.map((sample) => [sample.hour, of(sample) / 2 ** 20]));
    const [growth, doubt] = [HOURS * line.slope, HOURS * 2 * line.slopeError];
    tell({
      what: `${engine}: ${what} after ${HOURS} h of ${BOARDS} boards (${seen.size} different answers)`,
      ours: `${(of(last) / 2 ** 20).toFixed(1)} MB`,
      peer: `after a quarter of it ${(of(settled[0]!) / 2 ** 20).toFixed(1)} MB`,
      ratio: `${growth >= 0 ? '+' : ''}${growth.toFixed(1)} ± ${doubt.toFixed(1)} MB in ${HOURS} h, by the line through ${settled.length} hours`,
      wanted: most === null ? null : { goal: `${most} MB more at most`, met: growth + doubt <= most },
    });
  }
}

async function withServer(engine: string, environment: Readonly<Record<string, string>>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'heavy-air-board-day-'));
  const held = join(folder, 'held.json');
  const weather = await startFakeWeather({ seed: 7, now: virtualNow, delayMs: 5 });
  const push = await startPushService();
  const app = await startBuiltApp({
    env: {
      ...weather.environment(),
      ...environment,
      DATA_DIR: folder,
      TRUSTED_PROXIES: '1',
      PUSH_SERVICES: push.url,
      CLOCK_SPEED: String(SPEED),
      CLOCK_FROM: String(BEGAN),
      CLOCK_BEGAN: String(BEGAN),
      HELD_FILE: held,
      NODE_OPTIONS: `--require ${JSON.stringify(join(ROOT, 'tests', 'bench', 'fast-clock.cjs'))}`,
    },
    node: ['--expose-gc'],
  });
  const { ask, close } = asker(app.url, 16);
  const phones = new Map<string, object>();
  const phone = (name: string): object => {
    const known = phones.get(name) ?? push.subscription(name);
    phones.set(name, known);
    return known;
  };
  try {
    const typed = nightFrom(virtualNow(), HOURS + 4, RUN_HOURS);
    const place = { name: 'Lake', latitude: 46.8, longitude: -92.1 };
    const forecast = { ...typed, event: { ...typed.event, place }, hours: [] };
    const asked = Math.ceil(BOARDS / 4);
    const boards = [
      ...(await post(app.url, BOARDS - asked, () => typed)),
      ...(await post(app.url, asked, () => forecast)),
    ];
    const world: World = {
      app,
      boards,
      ask,
      held,
      etags: new Map(),
      seen: new Set(),
      phone,
    };
    const samples = await day(world);
    tellDay(engine, samples, world);
    const behind = await oldestPlan(world);
    tell({
      what: `${engine}: oldest plan of a board at the end of that day, ${push.received.length} messages and ${weather.calls().length} questions for weather later`,
      ours: `${behind.toFixed(0)} simulated minutes`,
      peer: '',
      ratio: '',
      wanted: { goal: '30 minutes', met: behind <= 30 },
    });
  } finally {
    close();
    await app.stop();
    await push.stop();
    await weather.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

await withServer('file', {});
if (HAS_POSTGRES) {
  const postgres = await startPostgres();
  try {
    await withServer('PostgreSQL', { DATABASE_URL: postgres.address });
  } finally {
    await postgres.stop();
  }
}
