import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { NIGHT } from '@/tests/api/night';
import { HAS_POSTGRES, startPostgres } from '@/tests/support/postgres';
import {
  type Ask,
  asker,
  inTurn,
  lookAt,
  nightFrom,
  type PostedBoard,
  post,
  quantile,
  steadily,
} from './board-crowd';
import { type BuiltApp, startBuiltApp, startServer } from './built-app';
import { ms, tell, times } from './outcome';
import { machineTime, processTime, residentMegabytes, timeSince } from './process-time';

// BOARD_BENCH=short tries the bench itself: the figures are then of no use.
const SHORT = process.env.BOARD_BENCH === 'short';
const BOARDS = SHORT ? 40 : 1000;
const FOLLOWERS = 10;
const LOOK_SECONDS = 15;
const LOOKS_PER_SECOND = (BOARDS * FOLLOWERS) / LOOK_SECONDS;
const PLANS_PER_SECOND = SHORT ? 5 : 100;
/** Health, and the empty handler beside it. */
const OTHERS_PER_SECOND = 20;
const SECONDS = SHORT ? 5 : 60;
/** Each board is planned again by itself once in so long: with runs that begin one board after the other. */
const REPLAN_MS = 900_000;
const WANTED = { nod: 50, health: 100 };
/** So many are asked for one after the other, to count what each takes of a processor. */
const COUNTED = SHORT ? 200 : 4000;

type World = {
  readonly engine: string;
  readonly app: BuiltApp;
  /** A server of the same kind that does nothing, in a process of its own. */
  readonly empty: BuiltApp;
  readonly boards: readonly PostedBoard[];
  /** Followers, planners and whoever asks for health have connections of their own, as they are people of their own. */
  readonly ask: Ask;
  readonly askPlan: Ask;
  readonly askHealth: Ask;
  readonly askEmpty: Ask;
  /** What each follower has seen last. */
  readonly etags: Map<number, string>;
};

const EMPTY_HANDLER =
  "require('node:http').createServer({ keepAliveTimeout: 75_000 }, (_, answer) => answer.end()).listen(process.env.PORT, '127.0.0.1')";

/** The look of one follower after the other: all of them in turn, the ten of one board apart from each other. */
async function look({ ask, etags, boards }: World, i: number): Promise<{ status: number; ms: number }> {
  const follower = i % (boards.length * FOLLOWERS);
  const answer = await ask(lookAt(boards[follower % boards.length]!, etags.get(follower)));
  if (answer.status === 200) etags.set(follower, answer.etag);
  else if (answer.status !== 304) throw new Error(`a follower got ${answer.status}`);
  return answer;
}

const PLAN = JSON.stringify({ ...NIGHT, now: '2027-01-16T18:00:00-06:00' });

async function plan({ askPlan }: World): Promise<number> {
  const headers = { 'content-type': 'application/json' };
  const answer = await askPlan({ method: 'POST', path: '/api/plan', headers, body: PLAN });
  if (answer.status !== 200) throw new Error(`a plan got ${answer.status} ${answer.text.slice(0, 200)}`);
  return answer.ms;
}

/** What each kind of request takes of a processor, with nothing else to do. */
async function costs(world: World): Promise<void> {
  const { app, empty, askHealth, askEmpty, engine } = world;
  const counted = async (pid: number, often: number, one: (i: number) => Promise<unknown>) => {
    const once = async (i: number): Promise<void> => void (await one(i));
    // Code is compiled while it runs the first times.
    await inTurn(often, 8, once);
    const before = processTime(pid);
    await inTurn(often, 8, once);
    const { main, others } = timeSince(pid, before);
    return { main: main / often, all: (main + others) / often };
  };
  const bare = await counted(empty.pid, COUNTED, () => askEmpty({ path: '/' }));
  for (const [what, often, one] of [
    ['a look that is answered 304', COUNTED, (i: number) => look(world, i)],
    ['a look at /api/health', COUNTED, () => askHealth({ path: '/api/health' })],
    ['a plan', COUNTED / 10, () => plan(world)],
  ] as const) {
    const cost = await counted(app.pid, often, one);
    tell({
      what: `${engine}: processor time of ${what}, on the thread that answers`,
      ours: `${ms(cost.main)} (${ms(cost.all)} on all threads)`,
      peer: `an empty handler ${ms(bare.main)}`,
      ratio: times(cost.main / bare.main),
      wanted: null,
    });
  }
}

type Times = Readonly<Record<'nods' | 'healths' | 'empties' | 'plans', number[]>>;

async function crowd(world: World): Promise<Times> {
  const { askHealth, askEmpty } = world;
  const taken: Times = { nods: [], healths: [], empties: [], plans: [] };
  await Promise.all([
    steadily(LOOKS_PER_SECOND, SECONDS, async (i) => {
      const answer = await look(world, i);
      if (answer.status === 304) taken.nods.push(answer.ms);
    }),
    steadily(PLANS_PER_SECOND, SECONDS, async () => {
      taken.plans.push(await plan(world));
    }),
    steadily(OTHERS_PER_SECOND, SECONDS, async () => {
      taken.healths.push((await askHealth({ path: '/api/health' })).ms);
    }),
    steadily(OTHERS_PER_SECOND, SECONDS, async () => {
      taken.empties.push((await askEmpty({ path: '/' })).ms);
    }),
  ]);
  return taken;
}

async function load(world: World): Promise<void> {
  const { app, engine } = world;
  const [began, machine, own, before] = [
    performance.now(),
    machineTime(),
    process.cpuUsage(),
    processTime(app.pid),
  ];
  const { nods, healths, empties, plans } = await crowd(world);
  const took = performance.now() - began;
  const { main, others } = timeSince(app.pid, before);
  const { user, system } = process.cpuUsage(own);
  const asking = (user + system) / 1000;
  const elsewhere = Math.max(0, machineTime() - machine - main - others - asking);
  const share = (time: number): string => `${Math.round((100 * time) / took)} %`;
  const looks = Math.floor(LOOKS_PER_SECOND * SECONDS);
  const empty = quantile(empties, 0.99);
  const made = (plans.length * 1000) / took;
  for (const [what, values, goal] of [
    [
      `p99 of a 304 (${nods.length} of ${looks} looks at ${BOARDS} boards, the others at one just planned again)`,
      nods,
      WANTED.nod,
    ],
    ['p99 of /api/health meanwhile', healths, WANTED.health],
  ] as const)
    tell({
      what: `${engine}: ${what}`,
      ours: ms(quantile(values, 0.99)),
      peer: `an empty handler meanwhile ${ms(empty)}`,
      ratio: times(quantile(values, 0.99) / empty),
      wanted: { goal: `${goal} ms`, met: quantile(values, 0.99) <= goal },
    });
  tell({
    what: `${engine}: p99 of a plan meanwhile, ${made.toFixed(0)} plans a second made over ${(took / 1000).toFixed(0)} s`,
    ours: ms(quantile(plans, 0.99)),
    peer: `half of them ${ms(quantile(plans, 0.5))}`,
    ratio: '',
    wanted: { goal: `${PLANS_PER_SECOND} plans a second`, met: made >= 0.98 * PLANS_PER_SECOND },
  });
  tell({
    what: `${engine}: of one processor, the thread that answers and the other threads of the server`,
    ours: `${share(main)} + ${share(others)}`,
    peer: `who asks ${share(asking)}, whatever else runs on this machine ${share(elsewhere)}`,
    ratio: '',
    wanted: null,
  });
  tell({
    what: `${engine}: resident memory then`,
    ours: `${residentMegabytes(app.pid).toFixed(0)} MB`,
    peer: '',
    ratio: '',
    wanted: null,
  });
}

async function withBoards(engine: string, environment: Readonly<Record<string, string>>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'heavy-air-board-bench-'));
  const app = await startBuiltApp({ env: { DATA_DIR: folder, TRUSTED_PROXIES: '1', ...environment } });
  const empty = await startServer(() => ['--eval', EMPTY_HANDLER]);
  const [looks, plans, healths, empties] = [
    asker(app.url, 256),
    asker(app.url, 256),
    asker(app.url, 16),
    asker(empty.url, 16),
  ];
  try {
    const [began, apart] = [Date.now() - 3_600_000, REPLAN_MS / BOARDS];
    const boards = await post(app.url, BOARDS, (i) => nightFrom(began + i * apart, 6));
    const world: World = {
      engine,
      app,
      empty,
      boards,
      ask: looks.ask,
      askPlan: plans.ask,
      askHealth: healths.ask,
      askEmpty: empties.ask,
      etags: new Map(),
    };
    await inTurn(BOARDS * FOLLOWERS, 8, async (i) => void (await look(world, i)));
    await costs(world);
    await load(world);
  } finally {
    for (const { close } of [looks, plans, healths, empties]) close();
    await empty.stop();
    await app.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

await withBoards('file', {});
if (HAS_POSTGRES) {
  const postgres = await startPostgres();
  try {
    await withBoards('PostgreSQL', { DATABASE_URL: postgres.address });
  } finally {
    await postgres.stop();
  }
}
