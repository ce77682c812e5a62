import { afterAll, afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createTicker } from '@/app/api/_boards/ticker';
import { endJob, setDue } from '@/lib/posted/job-rows';
import type { PostedDb } from '@/lib/posted/tables';
import { HOUR_MS, instant, MINUTE_MS } from '@/lib/time/instant';
import { boardWorld, forgetBoards, holdBoards, posted } from '@/tests/support/board-world';
import { engines } from '@/tests/support/posted-engines';

const [file] = engines();

/** A board with one job that is due in some hours, and a ticker with a clock of its own. */
async function waiting(hours: number, lookInMs: number | null = null) {
  const { db } = await file!.fresh();
  const world = boardWorld(db);
  holdBoards(world.deps);
  const { id } = await posted();
  await db.deleteFrom('job').execute();
  const start = world.deps.now();
  await setDue(db, endJob(id, instant(start + hours * HOUR_MS)));
  let runs = 0;
  const ticker = createTicker({
    dbIfAny: () => Promise.resolve<PostedDb>(db),
    now: world.deps.now,
    runDue: async () => {
      runs += 1;
      if (world.deps.now() >= start + hours * HOUR_MS) await db.deleteFrom('job').execute();
    },
    tell: (error) => world.faults.push(error),
    lookInMs,
  });
  return { ...world, ticker, runs: () => runs };
}

/** Lets the database answer, which no fake timer waits for. */
const answered = () => new Promise((resolve) => setImmediate(resolve));
async function settled(): Promise<void> {
  for (let i = 0; i < 20; i += 1) await answered();
}

describe('the timer of the boards', () => {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  });
  afterEach(() => {
    vi.useRealTimers();
    forgetBoards();
  });
  afterAll(() => file!.stop());

  it('is none where nothing was ever posted', async () => {
    const faults: unknown[] = [];
    const ticker = createTicker({
      dbIfAny: () => Promise.resolve(null),
      now: () => instant(0),
      runDue: () => Promise.resolve(),
      tell: (error) => faults.push(error),
      lookInMs: null,
    });
    ticker.wake();
    await settled();
    expect([ticker.waits(), faults]).toEqual([false, []]);
  });

  it('asks the database at first and when something is due, not between', async () => {
    const { ticker, clock, runs, faults } = await waiting(3);
    ticker.wake();
    await settled();
    expect([ticker.waits(), runs()]).toEqual([true, 1]);
    for (let minute = 1; minute < 180; minute += 1) {
      clock.forward(MINUTE_MS);
      vi.advanceTimersByTime(MINUTE_MS);
      await answered();
    }
    expect(runs()).toBe(1);
    clock.forward(MINUTE_MS);
    vi.advanceTimersByTime(MINUTE_MS);
    await settled();
    // Nothing is due any more, so nothing waits.
    expect([ticker.waits(), runs(), faults]).toEqual([false, 2, []]);
  });

  // A laptop's lid is shut: its clock goes on, its timers stand still. And Node keeps a list for each length of a timer
  // that keeps no process alive, until its time is past, cleared or not: no length may be of hours.
  it('sees within a minute of its own that the clock is past what was due, however often it was woken', async () => {
    const { ticker, clock, runs } = await waiting(5);
    for (let act = 0; act < 20; act += 1) {
      clock.forward(1234 + act);
      ticker.wake();
      await settled();
    }
    expect([runs(), vi.getTimerCount()]).toEqual([20, 1]);
    clock.forward(6 * HOUR_MS);
    vi.advanceTimersByTime(MINUTE_MS);
    // It looked at the clock, which says: at once.
    vi.advanceTimersByTime(1);
    await settled();
    expect(runs()).toBe(21);
  });

  it('looks for the jobs of a server that died as often as it is told to', async () => {
    const { ticker, clock, runs } = await waiting(2, 30_000);
    ticker.wake();
    await settled();
    for (let look = 1; look <= 4; look += 1) {
      clock.forward(30_000);
      vi.advanceTimersByTime(30_000);
      await settled();
      expect(runs()).toBe(1 + look);
    }
  });
});
