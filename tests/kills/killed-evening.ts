import { type ChildProcess, fork } from 'node:child_process';
import { join } from 'node:path';
import { build } from 'esbuild';
import { type DatabasePlace, openPosted } from '@/lib/posted/open-database';
import type { PostedDb } from '@/lib/posted/tables';
import { addMinutes, type Instant } from '@/lib/time/instant';
import { POSTED_AT } from '@/tests/support/board-forecast';
import {
  ask,
  BOARD,
  boardWorld,
  forgetBoards,
  forgetPostings,
  holdBoards,
  posted,
} from '@/tests/support/board-world';
import { type PushService, type ReceivedPush, startPushService } from '@/tests/support/push-service';
import { seededRandom } from '@/tests/support/seeded-random';
import { ROOT } from '@/tests/support/source-tree';
import { EVENING_MINUTES, evening, POSTING_MINUTES } from './evening';
import type { ServerOrder } from './server';

type Asked = {
  readonly place: DatabasePlace;
  readonly boards: number;
  readonly servers: number;
  readonly kills: number;
  readonly seed: number;
  readonly minutes?: number;
};

export type KilledEvening = {
  /** What was told, as it is written down: one line for each board, in the order they were posted. */
  readonly told: readonly (readonly string[])[];
  /** Messages by phone, each time one was taken by the push service. */
  readonly taken: readonly { readonly phone: string; readonly topic: string; readonly title: string }[];
  /** What each phone was to get. */
  readonly due: readonly { readonly phone: string; readonly title: string }[];
  readonly kills: number;
  readonly killedBetweenSendAndRecord: number;
  /** The longest a job that was due stood undone, on the evening's clock [min]. */
  readonly longestOverdueMinutes: number;
  readonly faults: readonly string[];
};

const [ADA] = BOARD.machines;
/** One engine with one carburettor: it is planned thousands of times here. */
const ONE = {
  ...BOARD,
  machines: [{ ...ADA!, machine: { ...ADA!.machine, carburettors: [{ main: 410 }] } }],
};

/** The program of a server, bundled as a build would, so that it starts in a moment. */
async function serverProgram(): Promise<string> {
  // Below the packages it names.
  const outfile = join(ROOT, '.cache', 'killed-server.mjs');
  await build({
    entryPoints: [join(ROOT, 'tests/kills/server.ts')],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    external: ['kysely', 'libsql', 'luxon', 'pg', 'zod'],
    // Older packages inside it ask for others by `require`.
    banner: {
      js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
    },
    logLevel: 'silent',
  });
  return outfile;
}

/** Posts boards in the first minutes of the evening, each followed by a phone, every tenth by three. */
async function postAll(db: PostedDb, service: PushService, boards: number): Promise<readonly string[]> {
  const world = boardWorld(db, { own: [service.url] });
  Object.assign(world.weather, evening(POSTED_AT));
  holdBoards(world.deps);
  const ids: string[] = [];
  for (let i = 0; i < boards; i += 1) {
    const at = addMinutes(POSTED_AT, Math.floor((i * POSTING_MINUTES) / boards));
    world.clock.forward(at - world.clock.now());
    forgetPostings();
    const { id, followSecret } = await posted(ONE);
    ids.push(id);
    for (let phone = 0; phone < (i % 10 === 0 ? 3 : 1); phone += 1) {
      const body = { subscription: service.subscription(`${id}-${phone}`), machines: ['ada'] };
      const { status } = await ask.follow(id, { secret: followSecret, body });
      if (status !== 204) throw new Error(`not followed: ${status}`);
    }
  }
  forgetBoards();
  return ids;
}

type Server = { child: ChildProcess; me: string | null };
/** Longer than any minute of the evening can take, however busy the machine. */
const PATIENCE_MS = 120_000;

/** An evening of many boards on servers that are killed at their work, minute by minute. */
export async function killedEvening(asked: Asked): Promise<KilledEvening> {
  const { place, boards, servers: count, kills: most, seed, minutes = EVENING_MINUTES } = asked;
  const { uniform } = seededRandom(seed);
  const faults: string[] = [];
  /** Kills that wait for a message to be taken. */
  let atPush = 0;
  let kills = 0;
  let between = 0;
  let now: Instant = POSTED_AT;
  const keyOf = ({ phone, message }: ReceivedPush) => `${phone} ${message.title}`;
  const seen = new Set<string>();
  const service = await startPushService(0, (push) => {
    const again = seen.has(keyOf(push));
    seen.add(keyOf(push));
    // Of the same message once at most, or it would be told three times by rights.
    if (atPush === 0 || again) return;
    atPush -= 1;
    between += 1;
    kill(servers[Math.floor(uniform() * servers.length)]!);
  });
  const file = await serverProgram();
  const order: ServerOrder = { place, push: service.url };
  const open = (server: Server): void => {
    const env = { ...process.env, SERVER_ORDER: JSON.stringify(order) };
    const child = fork(file, { env, execArgv: [], stdio: ['ignore', 'ignore', 'inherit', 'ipc'], cwd: ROOT });
    server.child = child;
    server.me = null;
    child.on('error', () => undefined);
    child.once('exit', (code) => {
      if (code !== null) faults.push(`a server ended by itself with ${code}`);
    });
    child.on('message', (told: { readonly me?: string; readonly fault?: string }) => {
      if (told.fault !== undefined) faults.push(told.fault);
      if (told.me === undefined || server.child !== child) return;
      server.me = told.me;
      child.send({ now }, () => undefined);
    });
  };
  const kill = (server: Server): void => {
    kills += 1;
    server.child.kill('SIGKILL');
    open(server);
  };
  const db = await openPosted(place);
  const servers: Server[] = Array.from({ length: count }, () => ({ child: null as never, me: null }));
  try {
    const ids = await postAll(db, service, boards);
    for (const server of servers) open(server);
    const killMinutes = Array.from({ length: most }, () =>
      Math.floor(POSTING_MINUTES + uniform() * (minutes - POSTING_MINUTES - 10)),
    );
    let overdue = 0;
    for (let minute = POSTING_MINUTES; minute <= minutes; minute += 1) {
      now = addMinutes(POSTED_AT, minute);
      overdue = Math.max(overdue, await mostOverdue(db, now));
      for (const { child, me } of servers) if (me !== null) child.send({ now }, () => undefined);
      let killsNow = 0;
      for (const at of killMinutes)
        if (at === minute) {
          if (uniform() < 0.5) atPush += 1;
          else killsNow += 1;
        }
      // No message comes any more for those that still wait for one.
      if (atPush > 0 && minute >= minutes - atPush) {
        atPush -= 1;
        killsNow += 1;
      }
      for (; killsNow > 0; killsNow -= 1) {
        await new Promise((done) => setTimeout(done, uniform() * 80));
        kill(servers[Math.floor(uniform() * servers.length)]!);
      }
      await untilDone(db, now, { servers, faults });
    }
    const rows = await db.selectFrom('message').selectAll().orderBy('at').orderBy('key').execute();
    const followers = await db.selectFrom('follower').select(['board_id', 'endpoint']).execute();
    const byBoard = new Map(ids.map((id) => [id, rows.filter((row) => row.board_id === id)]));
    const phonesOf = (id: string) =>
      followers.flatMap((each) => (each.board_id === id ? [each.endpoint.split('/').at(-1) ?? ''] : []));
    return {
      told: ids.map((id) => (byBoard.get(id) ?? []).map(({ key }) => key)),
      taken: service.received.map(({ phone, headers, message }) => ({
        phone,
        topic: String(headers.topic),
        title: message.title,
      })),
      due: rows.flatMap(({ board_id, title }) => phonesOf(board_id).map((phone) => ({ phone, title }))),
      kills,
      killedBetweenSendAndRecord: between,
      longestOverdueMinutes: overdue,
      faults,
    };
  } finally {
    for (const { child } of servers) child?.kill('SIGKILL');
    await db.destroy();
    await service.stop();
  }
}

/** How long the job that has been due longest stands undone [min]. */
async function mostOverdue(db: PostedDb, now: Instant): Promise<number> {
  const row = await db
    .selectFrom('job')
    .select((each) => each.fn.min('due_at').as('first'))
    .where('due_at', '<=', now)
    .executeTakeFirst();
  return row?.first == null ? 0 : Math.max(0, (now - Number(row.first)) / 60_000);
}

/** Until nothing is due but what the dead still hold. */
async function untilDone(
  db: PostedDb,
  now: Instant,
  { servers, faults }: { readonly servers: readonly Server[]; readonly faults: readonly string[] },
): Promise<void> {
  const until = performance.now() + PATIENCE_MS;
  while (performance.now() < until) {
    const due = await db
      .selectFrom('job')
      .select(['lease_until', 'lease_by'])
      .where('due_at', '<=', now)
      .execute();
    const live = new Set(servers.map(({ me }) => me));
    if (faults.length > 0) throw new Error(faults.join('\n'));
    if (due.every(({ lease_until, lease_by }) => lease_until > now && !live.has(lease_by))) return;
    await new Promise((done) => setTimeout(done, 5));
  }
  throw new Error('what is due is not done');
}
