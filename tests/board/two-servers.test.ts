import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { runDue } from '@/app/api/_boards/run-due';
import { openPosted } from '@/lib/posted/open-database';
import { ask, BOARD, boardWorld, forgetBoards, posted, useBoards } from '@/tests/support/board-world';
import { engines } from '@/tests/support/posted-engines';
import { type PushService, startPushService } from '@/tests/support/push-service';
import { seededRandom } from '@/tests/support/seeded-random';

const [ADA] = BOARD.machines;
const ONE = {
  ...BOARD,
  machines: [{ ...ADA!, machine: { ...ADA!.machine, carburettors: [{ main: 410 }] } }],
};
const BOARDS = 6;

/** What a process that is killed would have done next never happens. */
const never = () => new Promise<never>(() => undefined);

describe.each(engines())('servers that die at their work on boards in $name', (engine) => {
  let service: PushService;
  beforeAll(async () => {
    await engine.start();
    service = await startPushService();
  });
  afterAll(async () => {
    await service.stop();
    await engine.stop();
  });
  afterEach(forgetBoards);

  it('lose no message, and tell none twice but what was sent and not yet written down', async () => {
    const { db, place } = await engine.fresh();
    const other = engine.name === 'postgres' ? await openPosted(place) : db;
    service.received.length = 0;
    const world = boardWorld(db, { own: [service.url] });
    world.weather.degreesAt = () => -8;
    useBoards(world.deps);
    const boards = [];
    for (let i = 0; i < BOARDS; i += 1) {
      const { id, followSecret } = await posted(ONE);
      const body = { subscription: service.subscription(id), machines: ['ada'] };
      expect((await ask.follow(id, { secret: followSecret, body })).status).toBe(204);
      boards.push(id);
    }
    world.weather.colder = 4;
    world.weather.madeAt = world.clock.now();
    world.clock.forward(15 * 60_000);
    const { uniform } = seededRandom(7);
    let killedAfterSending = 0;
    let lives = 0;
    /** One life of a server: it works until it is killed before or after a message it sends, or has nothing to do. */
    const live = async (own: typeof db, me: string): Promise<void> => {
      lives += 1;
      let kill: () => void = () => undefined;
      const killed = new Promise<void>((resolve) => {
        kill = resolve;
      });
      const deps = {
        ...world.deps,
        me: `${me} ${lives}`,
        send: async (...push: Parameters<typeof world.deps.send>) => {
          const luck = uniform();
          if (luck < 0.3) {
            kill();
            return never();
          }
          const outcome = await world.deps.send(...push);
          if (luck >= 0.6) return outcome;
          killedAfterSending += 1;
          kill();
          return never();
        },
      };
      await Promise.race([killed, runDue({ db: own, deps }, (error) => world.faults.push(error))]);
    };
    // Twenty minutes: until the swap has to be begun, when there is something new to tell.
    for (let round = 0; round < 10; round += 1) {
      await Promise.all([live(db, 'one'), live(other, 'two')]);
      // The leases of the dead end after two minutes.
      world.clock.forward(121_000);
    }
    await world.due();
    if (other !== db) await other.destroy();
    expect(world.faults).toEqual([]);
    const perPhone = boards.map((id) => service.received.filter(({ phone }) => phone === id));
    expect(perPhone.every((got) => got.length >= 1)).toBe(true);
    expect(killedAfterSending).toBeGreaterThan(0);
    // Each was written down once in the end; what was sent and not written down was sent again.
    expect(service.received).toHaveLength(BOARDS + killedAfterSending);
    for (const got of perPhone) {
      expect(new Set(got.map(({ headers }) => headers.topic)).size).toBe(1);
      expect(new Set(got.map(({ message }) => message.title)).size).toBe(1);
    }
  });
});
