import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { PREFERENCES_ID } from '@/lib/store/preferences-id';
import { preferencesSchema } from '@/lib/store/records';
import { box, closeTabs, event, freshBrowser, hearing, machine, openTab, settled } from './tabs';

beforeEach(freshBrowser);
afterEach(closeTabs);

describe('what is put in', () => {
  it('comes out again, also after the browser was restarted', async () => {
    const store = await openTab();
    const stored = expectOk(await store.put('machines', 'm1', machine('Sled'), null));
    expect(stored).toMatchObject({
      id: 'm1',
      revision: 1,
      updatedAt: '2027-01-16T18:00:01.000Z',
      value: machine('Sled'),
    });
    store.close();
    const again = await openTab();
    expect(await again.get('machines', 'm1')).toEqual(stored);
    expect(again.health()).toMatchObject({ keeps: 'disk', because: null });
  });

  it('lies in its own table, in the order it was first written', async () => {
    const store = await openTab();
    for (const id of ['c', 'a', 'b']) await store.put('boxes', id, box(id, 400), null);
    await store.put('boxes', 'c', box('c again', 410), 1);
    await store.put('events', 'a', event('Friday night'), null);
    expect((await store.list('boxes')).map(({ id, revision }) => `${id} ${revision}`)).toEqual([
      'c 2',
      'a 1',
      'b 1',
    ]);
    expect((await store.list('events')).map(({ value }) => value.event.name)).toEqual(['Friday night']);
    expect(await store.list('log')).toEqual([]);
    expect(await store.get('boxes', 'nowhere')).toBeNull();
  });

  it('cannot be changed from outside', async () => {
    const store = await openTab();
    const mine = box('spares', 400);
    await store.put('boxes', 'b', mine, null);
    mine.entries[0]!.size = 999;
    (await store.get('boxes', 'b'))!.value.entries[0]!.size = 888;
    expect((await store.get('boxes', 'b'))?.value.entries[0]?.size).toBe(400);
  });

  it('has its defaults filled in', async () => {
    const store = await openTab();
    await store.put('preferences', PREFERENCES_ID, preferencesSchema.parse({}), null);
    expect((await store.get('preferences', PREFERENCES_ID))?.value).toMatchObject({
      temperature: 'F',
      theme: 'auto',
      eventId: null,
    });
  });

  it('is refused with the name of the field where it is no record of its table', async () => {
    const store = await openTab();
    const wrong = { ...machine('Sled'), machine: { ...machine('Sled').machine, carburettors: [] } };
    expect(await store.put('machines', 'm1', wrong, null)).toMatchObject({
      ok: false,
      reason: { code: 'invalid', issues: [{ path: 'machine.carburettors' }] },
    });
    expect(await store.put('boxes', '', box('x', 400), null)).toMatchObject({
      ok: false,
      reason: { code: 'invalid', issues: [{ path: 'id' }] },
    });
    expect(await store.list('machines')).toEqual([]);
  });
});

describe('two who change one record', () => {
  it('never overwrite what they have not seen: both values come back', async () => {
    const store = await openTab();
    await store.put('boxes', 'b', box('first', 400), null);
    await store.put('boxes', 'b', box('second', 410), 1);
    const late = await store.put('boxes', 'b', box('late', 420), 1);
    expect(late).toMatchObject({
      ok: false,
      reason: {
        code: 'conflict',
        mine: box('late', 420),
        theirs: { id: 'b', revision: 2, updatedAt: '2027-01-16T18:00:02.000Z', value: box('second', 410) },
      },
    });
    expect(expectOk(await store.put('boxes', 'b', box('late', 420), 2)).revision).toBe(3);
  });

  it('do not create the same record twice', async () => {
    const store = await openTab();
    await store.put('boxes', 'b', box('first', 400), null);
    expect(await store.put('boxes', 'b', box('mine', 410), null)).toMatchObject({
      reason: { code: 'conflict', theirs: { value: { name: 'first' } } },
    });
  });

  it('learn that the record is gone, and may put it there again', async () => {
    const store = await openTab();
    await store.put('boxes', 'b', box('first', 400), null);
    await store.remove('boxes', 'b', 1);
    expect(await store.put('boxes', 'b', box('edited', 410), 1)).toEqual({
      ok: false,
      reason: { code: 'conflict', mine: box('edited', 410), theirs: null },
    });
    // Above every revision there ever was: an old tab can never mistake it for the one it knows.
    expect(expectOk(await store.put('boxes', 'b', box('edited', 410), null)).revision).toBe(3);
    expect(await store.put('boxes', 'b', box('old tab', 430), 1)).toMatchObject({
      reason: { code: 'conflict' },
    });
  });

  it('cannot remove what the other has changed, or what is gone', async () => {
    const store = await openTab();
    await store.put('boxes', 'b', box('first', 400), null);
    await store.put('boxes', 'b', box('second', 410), 1);
    expect(await store.remove('boxes', 'b', 1)).toMatchObject({
      reason: { code: 'conflict', mine: null, theirs: { revision: 2 } },
    });
    await store.remove('boxes', 'b', 2);
    expect(await store.remove('boxes', 'b', 2)).toEqual({ ok: false, reason: { code: 'not-found' } });
  });
});

describe('undo', () => {
  it('brings back what was removed, in its old place', async () => {
    const store = await openTab();
    for (const id of ['a', 'b', 'c']) await store.put('boxes', id, box(id, 400), null);
    const removed = expectOk(await store.remove('boxes', 'b', 1));
    expect(removed.value).toEqual(box('b', 400));
    expect((await store.list('boxes')).map(({ id }) => id)).toEqual(['a', 'c']);
    expect(expectOk(await store.restore('boxes', removed)).revision).toBe(3);
    expect((await store.list('boxes')).map(({ id }) => id)).toEqual(['a', 'b', 'c']);
  });

  it('does not push aside what took its place', async () => {
    const store = await openTab();
    await store.put('boxes', 'b', box('first', 400), null);
    const removed = expectOk(await store.remove('boxes', 'b', 1));
    await store.put('boxes', 'b', box('new', 410), null);
    expect(await store.restore('boxes', removed)).toMatchObject({
      reason: { code: 'conflict', mine: { name: 'first' }, theirs: { value: { name: 'new' } } },
    });
  });
});

describe('a change of many records', () => {
  it('is made as one, and tells what stood before and after', async () => {
    const store = await openTab();
    await store.put('boxes', 'stays', box('stays', 400), null);
    await store.put('boxes', 'goes', box('goes', 410), null);
    await store.put('boxes', 'changes', box('changes', 420), null);
    const { before, after } = expectOk(
      await store.rewrite((current) => ({
        ...current,
        boxes: [
          current.boxes[0]!,
          { id: 'changes', value: box('changed', 420) },
          { id: 'new', value: box('new', 430) },
        ],
      })),
    );
    expect(before.boxes.map(({ id, revision }) => `${id} ${revision}`)).toEqual([
      'stays 1',
      'goes 1',
      'changes 1',
    ]);
    expect(after.boxes.map(({ id, revision }) => `${id} ${revision}`)).toEqual([
      'stays 1',
      'changes 2',
      'new 1',
    ]);
    expect(await store.snapshot()).toEqual(after);
  });

  it('is not made at all where one record is wrong or the change throws', async () => {
    const store = await openTab();
    await store.put('boxes', 'b', box('b', 400), null);
    const before = await store.snapshot();
    const wrong = await store.rewrite((current) => ({
      ...current,
      boxes: [
        { id: 'ok', value: box('ok', 400) },
        { id: 'bad', value: box('bad', -1) },
      ],
    }));
    expect(wrong).toMatchObject({
      reason: { code: 'invalid', issues: [{ path: 'boxes.bad.entries.0.size' }] },
    });
    await expect(
      store.rewrite(() => {
        throw new Error('changed my mind');
      }),
    ).rejects.toThrow('changed my mind');
    expect(await store.snapshot()).toEqual(before);
    expect(store.health().keeps).toBe('disk');
  });
});

describe('those who listen', () => {
  it('hear of every change, here and in other tabs', async () => {
    const [here, there] = [await openTab(), await openTab()];
    // What the tabs of the test before told each other has arrived.
    await settled();
    const [heardHere, heardThere] = [hearing(here), hearing(there)];
    await here.put('boxes', 'b', box('b', 400), null);
    await here.remove('boxes', 'b', 1);
    await here.rewrite((current) => current);
    await settled();
    const changes = [
      { kind: 'put', table: 'boxes', id: 'b', revision: 1 },
      { kind: 'removed', table: 'boxes', id: 'b', revision: 2 },
      { kind: 'everything' },
    ];
    expect(heardHere.filter(({ kind }) => kind !== 'health')).toEqual(
      changes.map((change) => ({ ...change, origin: 'this-tab' })),
    );
    expect(heardThere).toEqual(changes.map((change) => ({ ...change, origin: 'other-tab' })));
  });

  it('hear nothing of what was refused, nor after they left', async () => {
    const store = await openTab();
    await store.put('boxes', 'b', box('b', 400), null);
    await settled();
    const heard = hearing(store);
    await store.put('boxes', 'b', box('late', 400), null);
    const leave = store.subscribe((change) => heard.push(change));
    leave();
    await store.put('boxes', 'c', box('c', 400), null);
    await settled();
    expect(heard).toHaveLength(1);
  });

  it('see in the other tab what was written in this one', async () => {
    const [here, there] = [await openTab(), await openTab()];
    await here.put('boxes', 'b', box('b', 400), null);
    expect(await there.get('boxes', 'b')).toEqual(await here.get('boxes', 'b'));
    expect(await there.put('boxes', 'b', box('theirs', 400), null)).toMatchObject({
      reason: { code: 'conflict' },
    });
  });
});

describe('a closed store', () => {
  it('writes nothing and says so', async () => {
    const store = await openTab();
    await store.put('boxes', 'b', box('b', 400), null);
    store.close();
    expect(await store.put('boxes', 'b', box('late', 400), 1)).toEqual({
      ok: false,
      reason: { code: 'closed' },
    });
    expect(await store.remove('boxes', 'b', 1)).toEqual({ ok: false, reason: { code: 'closed' } });
    expect(await store.rewrite((current) => current)).toEqual({ ok: false, reason: { code: 'closed' } });
    expect(await store.list('boxes')).toEqual([]);
    expect(await (await openTab()).get('boxes', 'b')).toMatchObject({ value: { name: 'b' } });
  });
});

describe('the browser', () => {
  it('is asked once, after the first write, not to clear the data', async () => {
    let asked = 0;
    const store = await openTab({
      askToPersist: async () => {
        asked += 1;
        return true;
      },
    });
    await store.list('boxes');
    expect([asked, store.health().promised]).toEqual([0, null]);
    await store.put('boxes', 'b', box('b', 400), null);
    await store.put('boxes', 'b', box('c', 400), 1);
    await settled();
    expect([asked, store.health().promised]).toEqual([1, true]);
  });
});
