import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { onClock } from '@/lib/words/board-clock';
import {
  ask,
  BOARD,
  boardOf,
  boardWorld,
  forgetBoards,
  holdBoards,
  posted,
} from '@/tests/support/board-world';
import { engines } from '@/tests/support/posted-engines';
import { type PushService, startPushService } from '@/tests/support/push-service';

const [ADA] = BOARD.machines;
/** One engine with one carburettor: it is planned a hundred times here. */
const ONE = {
  ...BOARD,
  machines: [{ ...ADA!, machine: { ...ADA!.machine, carburettors: [{ main: 410 }] } }],
};

describe.each(engines())('an evening on a board in $name', (engine) => {
  let service: PushService;
  let world: ReturnType<typeof boardWorld>;
  beforeAll(async () => {
    await engine.start();
    service = await startPushService();
  });
  afterAll(async () => {
    await service.stop();
    await engine.stop();
  });
  beforeEach(async () => {
    service.received.length = 0;
    world = boardWorld((await engine.fresh()).db, { own: [service.url] });
    // Mild and steady: 410 holds all night.
    world.weather.degreesAt = () => -8;
    holdBoards(world.deps);
  });
  afterEach(() => {
    forgetBoards();
    expect(world.faults).toEqual([]);
  });

  const follow = async (id: string, secret: string, phone = 'phone', clock?: '12' | '24') => {
    const body = { subscription: service.subscription(phone), machines: ['ada'], clock };
    expect((await ask.follow(id, { secret, body })).status).toBe(204);
  };

  it('that stays as it was forecast buzzes nobody', async () => {
    const { id, followSecret } = await posted(ONE);
    await follow(id, followSecret);
    await world.pass(360, 15);
    expect(service.received).toEqual([]);
    // Every quarter of an hour and at the starts and ends of runs, and no more once all of them are over.
    const asked = world.asked();
    await world.pass(240, 60);
    expect(world.asked()).toBe(asked);
  });

  it('that turns 4 K colder is told once, in the words of the page, until the run it is for', async () => {
    const { id, followSecret, keepSecret } = await posted(ONE);
    await follow(id, followSecret);
    world.weather.colder = 4;
    world.weather.madeAt = world.clock.now();
    await world.pass(30, 5);
    expect(service.received).toHaveLength(1);
    const { message, headers } = service.received[0]!;
    const board = await boardOf(await ask.get(id, { secret: followSecret }));
    const job = board.machines[0]!.job!;
    expect(message.title).toBe(`Ada: ${job.lead}`);
    for (const line of [job.window!, ...job.lines]) expect(message.body).toContain(line);
    expect(message).toMatchObject({ board: id, machine: 'ada', done: { mains: [420], trim: null } });
    // Round 1 starts at 19:00; planned again at 18:15.
    expect(Number(headers.ttl)).toBe(45 * 60);
    expect(headers.topic).toMatch(/^[\w-]{32}$/);
    const kept = await boardOf(await ask.get(id, { secret: keepSecret }));
    expect(kept.keeper?.told).toMatchObject([
      { machine: 'ada', title: message.title, phones: 1, reached: 1 },
    ]);
    // Said to be in, it is not told back, and nothing more is to do.
    await ask.done(id, { secret: followSecret, body: { machine: 'ada', setting: message.done } });
    await world.pass(60, 15);
    expect(service.received).toHaveLength(1);
  });

  it('is told on the clock that each phone asked for, and on another once it asks again', async () => {
    const { id, followSecret } = await posted(ONE);
    await follow(id, followSecret, 'american', '12');
    await follow(id, followSecret, 'european', '24');
    await follow(id, followSecret, 'older');
    const told = async (colder: number) => {
      service.received.length = 0;
      world.weather.colder = colder;
      world.weather.madeAt = world.clock.now();
      await world.pass(30, 5);
      return Object.fromEntries(
        service.received.map(({ phone, message }) => [phone, `${message.title} ${message.body}`]),
      );
    };
    const first = await told(4);
    expect(first.european).toMatch(/\b(18|19):\d\d\b/);
    expect(first.older).toBe(first.european);
    expect(first.american).toMatch(/\b[67]:\d\d\u00a0pm\b/);
    expect(first.american).toBe(onClock(first.european!, '12'));
    await follow(id, followSecret, 'american', '24');
    const second = await told(12);
    expect(Object.keys(second)).toContain('american');
    expect(second.american).toBe(second.european);
  });

  it('is told again through a push service that is busy, and no more to a phone that has gone', async () => {
    const { id, followSecret, keepSecret } = await posted(ONE);
    await follow(id, followSecret);
    service.answerNext({ status: 429, headers: { 'retry-after': '90' } }, { status: 503 });
    world.weather.colder = 4;
    await world.pass(15);
    expect(service.received).toHaveLength(0);
    await world.pass(1);
    expect(service.received).toHaveLength(0);
    await world.pass(4);
    expect(service.received).toHaveLength(1);
    service.answerNext({ status: 410 });
    world.weather.colder = 12;
    await world.pass(15);
    expect(service.received).toHaveLength(1);
    const kept = await boardOf(await ask.get(id, { secret: keepSecret }));
    expect(kept.keeper?.followers).toEqual([{ machine: 'ada', phones: 0 }]);
  });

  it('with a forecast that grows old says so once', async () => {
    const { id, followSecret } = await posted({
      ...ONE,
      event: {
        ...ONE.event,
        runs: ONE.event.runs.map((run) => ({ ...run, start: later(run.start), end: later(run.end) })),
      },
    });
    await follow(id, followSecret);
    world.weather.fails = true;
    await world.pass(13 * 60, 30);
    expect(service.received.map(({ message }) => message.title)).toEqual(['Ada: the forecast is old']);
  });

  it('goes on after a change by the keeper: the new time is told at once', async () => {
    world.weather.colder = 6;
    const { id, followSecret, keepSecret } = await posted(ONE);
    await follow(id, followSecret);
    const read = await ask.get(id, { secret: keepSecret });
    const event = {
      ...ONE.event,
      runs: ONE.event.runs.map((run) => ({ ...run, start: in20(run.start), end: in20(run.end) })),
    };
    const headers = { 'if-match': read.headers.get('etag') ?? '' };
    expect((await ask.patch(id, { secret: keepSecret, headers, body: { event } })).status).toBe(200);
    await world.due();
    expect(service.received.map(({ message }) => message.title)).toEqual([
      `Ada: ${(await boardOf(await ask.get(id, { secret: followSecret }))).machines[0]!.job!.lead}`,
    ]);
  });
});

const moved = (hours: number) => (time: string) =>
  new Date(Date.parse(time) + hours * 3_600_000).toISOString();
const later = moved(14);
const in20 = moved(1 / 3);
