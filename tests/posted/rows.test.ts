import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { deleteBoard, insertBoard, readBoard, readMessages, writeBoard } from '@/lib/posted/board-rows';
import { deleteFollower, putFollower, readFollowers } from '@/lib/posted/follower-rows';
import { giveBack, nextDue, planJob, setDue, takeJob } from '@/lib/posted/job-rows';
import { mayHoldBoards, openPosted } from '@/lib/posted/open-database';
import { hashOf, isSecretOf, newSecret } from '@/lib/posted/secrets';
import { settingOr } from '@/lib/posted/setting-rows';
import type { BoardRow, FollowerRow } from '@/lib/posted/tables';
import { addMinutes, instant } from '@/lib/time/instant';
import { engines } from '@/tests/support/posted-engines';

const NOW = instant(Date.UTC(2027, 0, 17, 0, 0));
const at = (minutes: number) => addMinutes(NOW, minutes);

const board = (id: string, secrets = { keep: 'keep', follow: 'follow' }): BoardRow => ({
  id,
  keep_hash: hashOf(secrets.keep),
  follow_hash: hashOf(secrets.follow),
  night: JSON.stringify({ event: { name: 'Lake night, unmistakable' } }),
  memory: '{}',
  body: '{}',
  etag: '"1.x"',
  series: '',
  first_starts: '{}',
  revision: 1,
  version: 1,
  posted_at: NOW,
  planned_at: NOW,
  expires_at: at(48 * 60),
});
const follower = (id: string, machines: readonly string[], boardId = 'b') => ({
  board_id: boardId,
  id,
  endpoint: `https://fcm.googleapis.com/${id}`,
  p256dh: 'p',
  auth: 'a',
  machines: JSON.stringify(machines),
  clock: '24' as const,
  created_at: NOW,
});
const message = (key: string, machine = '1') => ({
  machine,
  key,
  at: NOW,
  until: at(30),
  title: 'Fit 420',
  body: '22:05 to 22:25.',
  payload: '{}',
});
const planned = (messages: readonly ReturnType<typeof message>[]) => ({
  change: { memory: '{"told":1}' },
  messages,
  look: at(15),
  now: NOW,
});

describe.each(engines())('rows in $name', (engine) => {
  beforeAll(engine.start);
  afterAll(engine.stop);

  it('give a due job to one taker, and to the next when its lease is over', async () => {
    const { db } = await engine.fresh();
    await setDue(db, planJob('b', at(0)));
    expect(await takeJob(db, { now: at(-1), by: 'one', kinds: ['plan'] })).toBeNull();
    const first = await takeJob(db, { now: NOW, by: 'one', kinds: ['plan'] });
    expect(first).toMatchObject({ id: 'plan:b', lease_by: 'one', tries: 1 });
    expect(await takeJob(db, { now: at(1), by: 'two', kinds: ['plan'] })).toBeNull();
    const second = await takeJob(db, { now: at(2), by: 'two', kinds: ['plan'] });
    expect(second).toMatchObject({ id: 'plan:b', lease_by: 'two', tries: 2 });
    // The first wakes up again: its lease is lost, and so is what it wants to write.
    await giveBack(db, first!, null);
    expect(await nextDue(db)).toBe(at(4));
    await giveBack(db, second!, at(60));
    expect(await nextDue(db)).toBe(at(60));
  });

  it('give each of many jobs to one of many takers at once', async () => {
    const { db, place } = await engine.fresh();
    const other = engine.name === 'postgres' ? await openPosted(place) : db;
    for (let i = 0; i < 30; i += 1) await setDue(db, planJob(`b${i}`, at(0)));
    const taken: string[] = [];
    const takeAll = async (from: typeof db, by: string) => {
      for (let job = await takeJob(from, { now: NOW, by, kinds: ['plan'] }); job !== null; ) {
        taken.push(job.id);
        await giveBack(from, job, null);
        job = await takeJob(from, { now: NOW, by, kinds: ['plan'] });
      }
    };
    await Promise.all(['a', 'b', 'c'].flatMap((by) => [takeAll(db, by), takeAll(other, `other ${by}`)]));
    if (other !== db) await other.destroy();
    expect([...taken].sort()).toEqual(Array.from({ length: 30 }, (_, i) => `plan:b${i}`).sort());
    expect(await nextDue(db)).toBeNull();
  });

  it('brings phones along that followed before they said how they read the clock', async () => {
    const { db: older, place } = await engine.fresh();
    await older.schema.alterTable('follower').dropColumn('clock').execute();
    await sql`delete from kysely_migration where name = '002-clock'`.execute(older);
    const { clock: _, ...before } = follower('phone', ['1']);
    await older
      .insertInto('follower')
      .values(before as unknown as FollowerRow)
      .execute();
    const newer = await openPosted(place);
    expect(await newer.selectFrom('follower').select(['id', 'clock']).execute()).toEqual([
      { id: 'phone', clock: '24' },
    ]);
    await newer.destroy();
  });

  it('take a planning once: over another version nothing of it is written', async () => {
    const { db } = await engine.fresh();
    await insertBoard(db, board('b'), at(15));
    await putFollower(db, follower('phone', ['1']));
    const before = (await readBoard(db, 'b'))!;
    expect(await writeBoard(db, before, planned([message('changed|1')]))).toBe(true);
    expect(await writeBoard(db, before, planned([message('changed|2')]))).toBe(false);
    const told = await readMessages(db, 'b', 10);
    expect(told.map(({ key, phones, reached }) => ({ key, phones, reached }))).toEqual([
      { key: 'changed|1', phones: 1, reached: 0 },
    ]);
  });

  it('hold a message of one key once, and a job for each phone that follows the machine', async () => {
    const { db } = await engine.fresh();
    await insertBoard(db, board('b'), at(15));
    for (const each of [follower('x', ['1']), follower('y', ['1', '2']), follower('z', ['2'])])
      await putFollower(db, each);
    for (const _ of [1, 2]) {
      const before = (await readBoard(db, 'b'))!;
      await writeBoard(db, before, planned([message('changed|1')]));
    }
    const sends = await db.selectFrom('job').select('follower_id').where('kind', '=', 'send').execute();
    expect(sends.map((each) => each.follower_id).sort()).toEqual(['x', 'y']);
  });

  it('forget what was to be sent to a phone that has gone', async () => {
    const { db } = await engine.fresh();
    await insertBoard(db, board('b'), null);
    await putFollower(db, follower('x', ['1']));
    await putFollower(db, follower('x', ['1', '2']));
    expect(await readFollowers(db, 'b')).toEqual([{ id: 'x', machines: '["1","2"]' }]);
    await writeBoard(db, (await readBoard(db, 'b'))!, planned([message('changed|1')]));
    expect(await deleteFollower(db, { board_id: 'b', id: 'x' })).toBe(true);
    expect(await db.selectFrom('job').select('id').where('kind', '=', 'send').execute()).toEqual([]);
  });

  it('takes no phone for a board that is not there', async () => {
    const { db } = await engine.fresh();
    expect(await putFollower(db, follower('x', ['1'], 'never'))).toBe(false);
    expect(await db.selectFrom('follower').selectAll().execute()).toEqual([]);
  });

  it('leaves no phone behind where a board is taken down as it asks', async () => {
    const { db, place } = await engine.fresh();
    // Another server, where there can be one.
    const other = place.engine === 'postgres' ? await openPosted(place) : db;
    const afterTicks = async (ticks: number) => {
      for (let i = 0; i < ticks; i += 1) await new Promise((resolve) => setImmediate(resolve));
    };
    for (let race = 0; race < 16; race += 1) {
      const id = `b${race}`;
      await insertBoard(db, board(id), at(15));
      await Promise.all([
        afterTicks(race % 8).then(() => putFollower(other, follower('x', ['1'], id))),
        afterTicks(3).then(() => deleteBoard(db, id)),
      ]);
    }
    const left = await db.selectFrom('follower').selectAll().execute();
    if (other !== db) await other.destroy();
    expect(left).toEqual([]);
  });

  it('are all gone with their board', async () => {
    const { db, place } = await engine.fresh();
    await insertBoard(db, board('b'), at(15));
    await insertBoard(db, board('other'), at(15));
    await putFollower(db, follower('x', ['1']));
    await writeBoard(db, (await readBoard(db, 'b'))!, planned([message('changed|1')]));
    await deleteBoard(db, 'b');
    for (const table of ['job', 'message', 'follower'] as const)
      expect(await db.selectFrom(table).selectAll().where('board_id', '=', 'b').execute()).toEqual([]);
    expect(await readBoard(db, 'b')).toBeNull();
    expect(await readBoard(db, 'other')).not.toBeNull();
    await deleteBoard(db, 'other');
    if (place.engine === 'file')
      for (const file of ['boards.db', 'boards.db-wal'])
        expect(readFileSync(join(place.folder, file), 'latin1')).not.toContain('unmistakable');
  });

  it('are taken down while they are planned, neither waiting for the other for good', async () => {
    const { db } = await engine.fresh();
    const ids = Array.from({ length: 60 }, (_, i) => `b${i}`);
    for (const id of ids) await insertBoard(db, board(id), at(15));
    await Promise.all(
      ids.flatMap((id) => [writeBoard(db, board(id), planned([message('k')])), deleteBoard(db, id)]),
    );
    for (const table of ['board', 'job', 'message'] as const)
      expect(await db.selectFrom(table).selectAll().execute(), table).toEqual([]);
  });

  it('keep a setting as whoever was first made it', async () => {
    const { db } = await engine.fresh();
    const made = await Promise.all(['a', 'b', 'c'].map((value) => settingOr(db, 'push-keys', () => value)));
    expect(new Set(made).size).toBe(1);
    expect(await settingOr(db, 'push-keys', () => 'later')).toBe(made[0]);
  });

  it('stand as they were when the database is opened again', async () => {
    const { db, place } = await engine.fresh();
    await insertBoard(db, board('b'), at(15));
    expect(mayHoldBoards(place)).toBe(true);
    const again = await openPosted(place);
    expect(await readBoard(again, 'b')).toEqual(board('b'));
    await again.destroy();
    if (place.engine === 'file') expect(statSync(join(place.folder, 'boards.db')).mode & 0o077).toBe(0);
  });
});

describe('a secret', () => {
  it('is 128 random bits, and is known by its hash only', () => {
    const secrets = Array.from({ length: 100 }, newSecret);
    expect(new Set(secrets).size).toBe(100);
    expect(secrets.every((secret) => Buffer.from(secret, 'base64url').length === 16)).toBe(true);
    const [one = '', other = ''] = secrets;
    expect(isSecretOf(one, hashOf(one))).toBe(true);
    expect(isSecretOf(other, hashOf(one))).toBe(false);
    expect(isSecretOf('', hashOf(one))).toBe(false);
    expect(isSecretOf(one, '')).toBe(false);
  });
});
