import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { DATABASE_NAME } from '@/lib/store/database-name';
import { box, closeTabs, freshBrowser, openTab } from './tabs';

beforeEach(freshBrowser);
afterEach(closeTabs);

/** Writes behind the back of the store, as a fault would. */
async function damage(row: Record<string, unknown>): Promise<void> {
  const database = await openDB(DATABASE_NAME);
  await database.put('records', row);
  database.close();
}

const good = {
  table: 'boxes',
  id: 'b',
  order: 1,
  revision: 4,
  updatedAt: '2027-01-16T18:00:00.000Z',
  removed: false,
};

describe('a damaged record', () => {
  it('is set aside with what is wrong, and harms no other', async () => {
    const store = await openTab();
    await store.put('boxes', 'a', box('a', 400), null);
    await damage({ ...good, value: { name: 'b', entries: [{ size: -5, count: 1 }] } });
    expect((await store.list('boxes')).map(({ id }) => id)).toEqual(['a']);
    const [aside] = store.health().setAside;
    expect(aside).toMatchObject({
      why: 'damaged',
      table: 'boxes',
      id: 'b',
      issues: [{ path: 'value.entries.0.size' }],
    });
    expect(JSON.parse(aside?.text ?? '')).toEqual({ name: 'b', entries: [{ size: -5, count: 1 }] });
  });

  it('is still there after a restart, once', async () => {
    await openTab();
    await damage({ ...good, value: 'not a box' });
    const store = await openTab();
    await store.list('boxes');
    await store.get('boxes', 'b');
    const again = await openTab();
    expect(again.health().setAside.map(({ text }) => text)).toEqual(['"not a box"']);
  });

  it('leaves its place to be filled, above the revision it had', async () => {
    const store = await openTab();
    await damage({ ...good, value: null });
    expect(await store.get('boxes', 'b')).toBeNull();
    expect(expectOk(await store.put('boxes', 'b', box('new', 400), null)).revision).toBe(6);
  });

  it('is noticed when written to: nothing is overwritten unseen', async () => {
    const store = await openTab();
    await damage({ ...good, value: { name: 'b' } });
    expect(await store.put('boxes', 'b', box('mine', 400), 4)).toEqual({
      ok: false,
      reason: { code: 'conflict', mine: box('mine', 400), theirs: null },
    });
    expect(store.health().setAside).toHaveLength(1);
  });

  it.each([
    ['no revision', { ...good, revision: 'four', value: box('b', 400) }],
    ['no order', { ...good, order: null, value: box('b', 400) }],
    ['a field nobody knows', { ...good, extra: true, value: box('b', 400) }],
  ])('may be so by its own row: %s', async (_, row) => {
    const store = await openTab();
    await damage(row);
    expect(await store.list('boxes')).toEqual([]);
    expect(JSON.parse(store.health().setAside[0]?.text ?? '')).toEqual(box('b', 400));
  });

  it('may lie in a table nobody knows', async () => {
    const store = await openTab();
    await damage({ ...good, table: 'gearboxes', value: {} });
    expect((await store.snapshot()).boxes).toEqual([]);
    expect(store.health().setAside).toMatchObject([{ table: 'gearboxes', issues: [{ path: 'table' }] }]);
  });

  it('can be let go once it was seen to, and taken back', async () => {
    const store = await openTab();
    await damage({ ...good, value: null });
    await store.list('boxes');
    const [aside] = store.health().setAside;
    const dropped = await store.dropSetAside(aside?.key ?? '');
    expect([dropped, store.health().setAside]).toEqual([aside, []]);
    if (dropped !== null) await store.returnSetAside(dropped);
    expect((await openTab()).health().setAside).toEqual([aside]);
  });
});
