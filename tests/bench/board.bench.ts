import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { NIGHT } from '@/tests/api/night';
import { asker, nightFrom, quantile, steadily } from './board-crowd';
import { startBuiltApp } from './built-app';
import { ms, tell, times } from './outcome';

// BOARD_BENCH=short tries the bench itself: the figures are then of no use.
const SHORT = process.env.BOARD_BENCH === 'short';
const BOARDS = SHORT ? 40 : 1000;
const FOLLOWERS = 10;
const LOOK_SECONDS = 15;
const PLANS_PER_SECOND = SHORT ? 5 : 100;
const SECONDS = SHORT ? 5 : 30;
const WANTED = { nod: 50, health: 100 };

/** Posts boards, each as if by another caller behind our own proxy. */
async function post(
  url: string,
  boards: number,
  night: object,
): Promise<readonly { id: string; followSecret: string }[]> {
  const { ask, close } = asker(url, 4);
  const body = JSON.stringify(night);
  const posted: { id: string; followSecret: string }[] = [];
  for (let i = 0; i < boards; i += 1) {
    const headers = { 'content-type': 'application/json', 'x-forwarded-for': `10.0.${i >> 8}.${i & 255}` };
    const answer = await ask({ method: 'POST', path: '/api/boards', headers, body });
    if (answer.status !== 201) throw new Error(`not posted: ${answer.status} ${answer.text}`);
    posted.push(JSON.parse(answer.text));
  }
  close();
  return posted;
}

const rssOf = (pid: number): number =>
  Number(/VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1024;

async function load(folder: string): Promise<void> {
  const app = await startBuiltApp({ env: { DATA_DIR: folder, TRUSTED_PROXIES: '1' } });
  try {
    const boards = await post(app.url, BOARDS, nightFrom(Date.now(), 6));
    const { ask, close } = asker(app.url, 64);
    const look = ({ id, followSecret }: (typeof boards)[number], etag = '') =>
      ask({
        path: `/api/boards/${id}`,
        headers: {
          authorization: `Bearer ${followSecret}`,
          ...(etag === '' ? {} : { 'if-none-match': etag }),
        },
      });
    const etags = new Map<string, string>();
    for (const board of boards) etags.set(board.id, (await look(board)).etag);
    const plan = JSON.stringify({ ...NIGHT, now: '2027-01-16T18:00:00-06:00' });
    const [nods, healths, peers, plans]: [number[], number[], number[], number[]] = [[], [], [], []];
    const perSecond = (BOARDS * FOLLOWERS) / LOOK_SECONDS;
    await Promise.all([
      steadily(perSecond, SECONDS, async (i) => {
        const board = boards[i % boards.length]!;
        const answer = await look(board, etags.get(board.id));
        if (answer.status === 304) nods.push(answer.ms);
        else if (answer.status === 200) etags.set(board.id, answer.etag);
        else throw new Error(`a follower got ${answer.status}`);
      }),
      steadily(PLANS_PER_SECOND, SECONDS, async () => {
        const headers = { 'content-type': 'application/json' };
        const answer = await ask({ method: 'POST', path: '/api/plan', headers, body: plan });
        if (answer.status !== 200)
          throw new Error(`a plan got ${answer.status} ${answer.text.slice(0, 200)}`);
        plans.push(answer.ms);
      }),
      steadily(10, SECONDS, async () => {
        healths.push((await ask({ path: '/api/health' })).ms);
      }),
    ]);
    // The empty handler under the same number of requests, without plans.
    await steadily(perSecond, Math.ceil(SECONDS / 3), async () => {
      peers.push((await ask({ path: '/api/health' })).ms);
    });
    close();
    const peer = quantile(peers, 0.99);
    const share = `${nods.length} nods of ${Math.floor(perSecond * SECONDS)} looks, ${plans.length} plans in ${SECONDS} s`;
    for (const [what, values, goal] of [
      [`p99 of a 304, ${BOARDS} boards with ${FOLLOWERS} followers each (${share})`, nods, WANTED.nod],
      ['p99 of health meanwhile', healths, WANTED.health],
    ] as const)
      tell({
        what,
        ours: ms(quantile(values, 0.99)),
        peer: `empty handler at the same rate ${ms(peer)}`,
        ratio: times(quantile(values, 0.99) / peer),
        wanted: { goal: `${goal} ms`, met: quantile(values, 0.99) <= goal },
      });
    tell({
      what: 'p99 of a plan meanwhile',
      ours: ms(quantile(plans, 0.99)),
      peer: '',
      ratio: '',
      wanted: null,
    });
    tell({
      what: 'resident memory with them',
      ours: `${rssOf(app.pid).toFixed(0)} MB`,
      peer: '',
      ratio: '',
      wanted: null,
    });
  } finally {
    await app.stop();
  }
}

/** A day in some minutes. */
const DAY_BOARDS = SHORT ? 3 : 50;
const DAY_HOURS = SHORT ? 2 : 24;
const SPEED = SHORT ? 720 : 360;
/** What comes and goes with caches and compiled code. Judgement. */
const MOST_GROWTH_MB = 8;

async function day(folder: string): Promise<void> {
  const held = join(folder, 'held.json');
  const app = await startBuiltApp({
    env: {
      DATA_DIR: folder,
      TRUSTED_PROXIES: '1',
      CLOCK_SPEED: String(SPEED),
      CLOCK_FROM: String(Date.now()),
      HELD_FILE: held,
      NODE_OPTIONS: `--require ${JSON.stringify(join(import.meta.dirname, 'fast-clock.cjs'))}`,
    },
    node: ['--expose-gc'],
  });
  const holds = async (): Promise<{ readonly heapUsed: number; readonly rss: number }> => {
    rmSync(held, { force: true });
    process.kill(app.pid, 'SIGUSR2');
    for (let tries = 0; tries < 100; tries += 1) {
      await new Promise((done) => setTimeout(done, 50));
      const text = await Promise.resolve()
        .then(() => readFileSync(held, 'utf8'))
        .catch(() => '');
      if (text !== '') return JSON.parse(text);
    }
    throw new Error('the server does not say what it holds');
  };
  try {
    const boards = await post(app.url, DAY_BOARDS, nightFrom(Date.now() + 600_000, DAY_HOURS + 4));
    const { ask, close } = asker(app.url, 8);
    const seconds = (DAY_HOURS * 3600) / SPEED;
    const looked = new Set<string>();
    const watch = (part: number) =>
      steadily(20, Math.max(1, Math.floor(seconds * part)), async (i) => {
        const { id, followSecret } = boards[i % boards.length]!;
        const answer = await ask({
          path: `/api/boards/${id}`,
          headers: { authorization: `Bearer ${followSecret}` },
        });
        if (answer.status !== 200) throw new Error(`a follower got ${answer.status}`);
        looked.add(answer.etag);
      });
    // Code that is compiled once and what is loaded at first need are there after a while.
    await watch(0.2);
    const before = await holds();
    await watch(0.8);
    const after = await holds();
    close();
    const growth = (after.heapUsed - before.heapUsed) / 2 ** 20;
    tell({
      what: `heap after ${DAY_HOURS} h of ${DAY_BOARDS} boards (${looked.size} different answers), resident ${Math.round(after.rss / 2 ** 20)} MB`,
      ours: `${(after.heapUsed / 2 ** 20).toFixed(1)} MB`,
      peer: `after a fifth of it ${(before.heapUsed / 2 ** 20).toFixed(1)} MB`,
      ratio: `${growth >= 0 ? '+' : ''}${growth.toFixed(1)} MB`,
      wanted: { goal: `${MOST_GROWTH_MB} MB more at most`, met: growth <= MOST_GROWTH_MB },
    });
  } finally {
    await app.stop();
  }
}

for (const part of [load, day]) {
  const folder = mkdtempSync(join(tmpdir(), 'heavy-air-board-bench-'));
  try {
    await part(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
