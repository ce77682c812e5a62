import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { DatabasePlace } from '@/lib/posted/open-database';
import type { PostedDb } from '@/lib/posted/tables';
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
import { problemOf } from './ask';

const FCM = {
  endpoint: 'https://fcm.googleapis.com/fcm/send/abc',
  keys: { p256dh: `B${'a'.repeat(86)}`, auth: 'a'.repeat(22) },
};
const set420 = { machine: 'ada', setting: { mains: [420, 420] } };

describe.each(engines())('a board in $name', (engine) => {
  let world: ReturnType<typeof boardWorld>;
  let db: PostedDb;
  let place: DatabasePlace;
  beforeAll(engine.start);
  afterAll(engine.stop);
  beforeEach(async () => {
    ({ db, place } = await engine.fresh());
    world = boardWorld(db);
    holdBoards(world.deps);
  });
  afterEach(forgetBoards);

  it('is posted, read by both secrets, and lasts 48 hours after its last run', async () => {
    const { id, keepSecret, followSecret, expiresAt } = await posted();
    // The last of its runs ends at 23:40 in Chicago, which is 05:40Z.
    expect(expiresAt).toBe('2027-01-19T05:40:00Z');
    const followed = await boardOf(await ask.get(id, { secret: followSecret }));
    expect(followed.machines.map(({ id: one, name }) => [one, name])).toEqual([
      ['ada', 'Ada'],
      ['bo', 'Bo'],
    ]);
    expect(followed.air).toEqual({ temperatureC: -7, pressureHpa: 986, relativeHumidity: 0.8 });
    expect(followed.machines[0]?.runs.map(({ name, state }) => [name, state])).toEqual([
      ['Round 1', 'planned'],
      ['Round 2', 'planned'],
      ['Round 3', 'planned'],
      ['Round 4', 'planned'],
    ]);
    expect([followed.keeper, followed.night]).toEqual([null, undefined]);
    const kept = await boardOf(await ask.get(id, { secret: keepSecret }));
    expect(kept.keeper).toEqual({
      followers: [
        { machine: 'ada', phones: 0 },
        { machine: 'bo', phones: 0 },
      ],
      told: [],
    });
  });

  it('answers with a nod while nothing has changed', async () => {
    const { id, keepSecret, followSecret } = await posted();
    for (const secret of [keepSecret, followSecret]) {
      const first = await ask.get(id, { secret });
      const etag = first.headers.get('etag') ?? '';
      expect(first.headers.get('cache-control')).toBe('private, no-cache');
      const again = await ask.get(id, { secret, headers: { 'if-none-match': etag } });
      expect([again.status, await again.text(), again.headers.get('etag')]).toEqual([304, '', etag]);
      await ask.done(id, { secret: followSecret, body: set420 });
      expect((await ask.get(id, { secret, headers: { 'if-none-match': etag } })).status).toBe(200);
    }
  });

  it('is changed by its keeper from the revision that was read, and from no other', async () => {
    const { id, keepSecret, followSecret } = await posted();
    const read = await ask.get(id, { secret: keepSecret });
    const etag = read.headers.get('etag') ?? '';
    const runs = BOARD.event.runs.map((run) => ({
      ...run,
      start: run.start.replace(':00:00-06', ':20:00-06').replace(':30:00-06', ':50:00-06'),
      end: run.end.replace(':10:00-06', ':30:00-06').replace(':40:00-06', ':59:00-06'),
    }));
    const body = { event: { ...BOARD.event, runs } };
    const headers = { 'if-match': etag };
    expect((await problemOf(await ask.patch(id, { secret: keepSecret, body }))).status).toBe(428);
    expect((await problemOf(await ask.patch(id, { secret: followSecret, headers, body }))).status).toBe(403);
    const changed = await boardOf(await ask.patch(id, { secret: keepSecret, headers, body }));
    expect(changed.revision).toBe(2);
    expect(changed.machines.map(({ lateByMinutes }) => lateByMinutes)).toEqual([20, 20]);
    expect((await problemOf(await ask.patch(id, { secret: keepSecret, headers, body }))).status).toBe(412);
    // Planned again by the clock alone it is the same revision: no conflict.
    const now = await ask.get(id, { secret: keepSecret });
    await world.pass(20, 5);
    expect(world.faults).toEqual([]);
    const later = { 'if-match': now.headers.get('etag') ?? '' };
    expect((await ask.patch(id, { secret: keepSecret, headers: later, body })).status).toBe(200);
  });

  it('keeps what its followers said where the keeper changes something else', async () => {
    const { id, keepSecret, followSecret } = await posted();
    await ask.done(id, { secret: followSecret, body: set420 });
    const etag = (await ask.get(id, { secret: keepSecret })).headers.get('etag') ?? '';
    const machines = [{ ...BOARD.machines[0], name: 'Ada Again' }, BOARD.machines[1]];
    const headers = { 'if-match': etag };
    const changed = await boardOf(await ask.patch(id, { secret: keepSecret, headers, body: { machines } }));
    expect(changed.machines[0]).toMatchObject({ name: 'Ada Again', inNow: '420', known: true });
  });

  it('hears what is in from its followers, and the keeper sees it', async () => {
    const { id, keepSecret, followSecret } = await posted();
    const told = await boardOf(await ask.done(id, { secret: followSecret, body: set420 }));
    expect(told.machines[0]).toMatchObject({ inNow: '420', known: true });
    expect(told.machines[1]).toMatchObject({ known: false });
    const kept = await boardOf(await ask.get(id, { secret: keepSecret }));
    expect(kept.machines[0]).toMatchObject({ inNow: '420', known: true });
    for (const [body, status] of [
      [{ ...set420, machine: 'nobody' }, 422],
      [{ ...set420, setting: { mains: [420] } }, 422],
      [{ ...set420, at: '2027-01-17T03:00:00Z' }, 422],
      [{ ...set420, at: '2027-01-12T03:00:00Z' }, 422],
      [{ machine: 'ada' }, 400],
    ] as const)
      expect((await problemOf(await ask.done(id, { secret: followSecret, body }))).status).toBe(status);
  });

  it('keeps both of two that say at once what is in', async () => {
    const { id, followSecret } = await posted();
    const say = (machine: string) =>
      ask.done(id, { secret: followSecret, body: { ...set420, machine } }).then(({ status }) => status);
    expect(await Promise.all([say('ada'), say('bo')])).toEqual([200, 200]);
    const board = await boardOf(await ask.get(id, { secret: followSecret }));
    expect(board.machines.map(({ inNow }) => inNow)).toEqual(['420', '420']);
  });

  it('is gone for everybody when it is taken down, and when its time is over', async () => {
    const { id, keepSecret, followSecret } = await posted();
    await ask.follow(id, { secret: followSecret, body: { subscription: FCM, machines: ['ada'] } });
    expect((await problemOf(await ask.remove(id, { secret: followSecret }))).status).toBe(403);
    expect((await ask.remove(id, { secret: keepSecret })).status).toBe(204);
    for (const secret of [keepSecret, followSecret])
      expect((await problemOf(await ask.get(id, { secret }))).status).toBe(404);
    const other = await posted();
    await world.pass(54 * 60, 60);
    expect(world.faults).toEqual([]);
    expect((await problemOf(await ask.get(other.id, { secret: other.keepSecret }))).status).toBe(404);
    for (const table of ['board', 'follower', 'message', 'job'] as const)
      expect(await db.selectFrom(table).selectAll().execute(), table).toEqual([]);
  });

  it('opens to nobody without one of its secrets, and the search for one is over soon', async () => {
    const { id, keepSecret, followSecret } = await posted();
    const other = await posted();
    expect((await problemOf(await ask.get(id, {}))).status).toBe(401);
    const wrong = (secret: string) => ask.get(id, { secret });
    const statuses: number[] = [];
    for (let i = 0; i < 40; i += 1) statuses.push((await wrong(`${i}`.padStart(22, 'A'))).status);
    expect(statuses.slice(0, 20)).toEqual(Array.from({ length: 20 }, () => 404));
    expect(statuses.slice(20)).toEqual(Array.from({ length: 20 }, () => 429));
    // Whoever has the secret is not kept out by those who have not.
    expect((await wrong(followSecret)).status).toBe(200);
    world.clock.forward(600_000);
    for (const secret of [other.keepSecret, keepSecret.slice(0, -1), `${followSecret}A`, id])
      expect((await problemOf(await wrong(secret))).status).toBe(404);
    // A board that is not there answers as one that stays shut.
    expect(await problemOf(await ask.get('AAAAAAAAAAAA', { secret: keepSecret }))).toEqual(
      await problemOf(await wrong(other.keepSecret)),
    );
    for (const shut of [
      ask.patch(id, { secret: other.keepSecret, body: {}, headers: { 'if-match': '"1.a"' } }),
      ask.remove(id, { secret: other.keepSecret }),
      ask.done(id, { secret: other.followSecret, body: set420 }),
      ask.follow(id, { secret: other.followSecret, body: { subscription: FCM, machines: ['ada'] } }),
      ask.unfollow(id, { secret: other.followSecret, body: { endpoint: FCM.endpoint } }),
    ])
      expect((await problemOf(await shut)).status).toBe(404);
  });

  it('keeps no secret, only what can be checked against one', async () => {
    const { id, keepSecret, followSecret } = await posted();
    await ask.done(id, { secret: followSecret, body: set420 });
    const rows = JSON.stringify([
      await db.selectFrom('board').selectAll().execute(),
      await db.selectFrom('job').selectAll().execute(),
    ]);
    const { folder } = place.engine === 'file' ? place : { folder: null };
    const read = (file: string) => (folder === null ? '' : readFileSync(join(folder, file), 'latin1'));
    const files = folder === null ? [] : [read('boards.db') + read('boards.db-wal')];
    for (const text of [rows, ...files]) {
      expect(text).toContain(id);
      expect(text).not.toContain(keepSecret);
      expect(text).not.toContain(followSecret);
    }
  });

  it('refuses what is too much, too deep or not its own, and takes strange names as names', async () => {
    const post = async (body: unknown) => (await ask.post(body)).status;
    expect(await post('x'.repeat(10_000_000))).toBe(413);
    expect(await post(`${'['.repeat(100_000)}${']'.repeat(100_000)}`)).toBe(400);
    expect(await post({ ...BOARD, machines: Array.from({ length: 101 }, () => BOARD.machines[0]) })).toBe(
      400,
    );
    expect(await post({ ...BOARD, machines: [BOARD.machines[0], BOARD.machines[0]] })).toBe(400);
    expect(await post({ ...BOARD, event: { ...BOARD.event, place: undefined } })).toBe(400);
    expect(await post({ ...BOARD, secret: 'mine' })).toBe(400);
    expect(await post({ ...BOARD, event: { ...BOARD.event, runs: [] } })).toBe(422);
    const name = '\u202EdaA <img src=x onerror=alert(1)> \u0000\u2066';
    const { id, followSecret } = await posted({ ...BOARD, machines: [{ ...BOARD.machines[0]!, name }] });
    const board = await boardOf(await ask.get(id, { secret: followSecret }));
    // What turns text round is taken off as it comes in (UAX #9); the rest is a name like any other.
    expect(board.machines[0]?.name).toBe('daA <img src=x onerror=alert(1)> \u0000');
  });

  it('lets a phone follow by known push services only, and stop again', async () => {
    const { id, keepSecret, followSecret } = await posted();
    const follow = async (endpoint: string, machines = ['ada']) =>
      (await ask.follow(id, { secret: followSecret, body: { subscription: { ...FCM, endpoint }, machines } }))
        .status;
    for (const endpoint of [
      'https://127.0.0.1/x',
      'https://10.0.0.1/x',
      'http://169.254.169.254/latest',
      'https://localhost/x',
      'https://push.example/x',
      'http://fcm.googleapis.com/x',
    ])
      expect([endpoint, await follow(endpoint)]).toEqual([endpoint, 422]);
    expect(await follow(FCM.endpoint, ['nobody'])).toBe(422);
    expect(await follow(FCM.endpoint)).toBe(204);
    expect(await follow(FCM.endpoint, ['ada', 'bo'])).toBe(204);
    const phones = async () =>
      (await boardOf(await ask.get(id, { secret: keepSecret }))).keeper?.followers.map((each) => each.phones);
    expect(await phones()).toEqual([1, 1]);
    await ask.unfollow(id, { secret: followSecret, body: { endpoint: FCM.endpoint } });
    expect(await phones()).toEqual([0, 0]);
  });

  it('is posted so many at once, and then one by one', async () => {
    const statuses: number[] = [];
    for (let i = 0; i < 62; i += 1) statuses.push((await ask.post({})).status);
    expect(statuses.slice(59)).toEqual([400, 429, 429]);
    world.clock.forward(10_000);
    expect((await ask.post({})).status).toBe(400);
  });
});
