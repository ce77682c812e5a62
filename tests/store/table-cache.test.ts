import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { openStore } from '@/lib/store/open-store';
import { tableCache } from '@/lib/store/table-cache';

const noDatabase = () => Promise.reject(new Error('no database here'));
const box = (name: string) => ({ name, entries: [{ size: 410, count: 2 }] });

async function watchedBoxes() {
  const store = await openStore({ open: noDatabase });
  const first = expectOk(await store.put('boxes', 'a', box('Trailer'), null));
  expectOk(await store.put('boxes', 'b', box('Truck'), null));
  const tables = tableCache(store);
  let told = 0;
  tables.watch('boxes', () => {
    told += 1;
  });
  await tables.settled();
  return { store, tables, first, told: () => told };
}

describe('the tables on screen', () => {
  it('hand on a record that did not change as it was, so that no plan is made again for it', async () => {
    const { store, tables, first } = await watchedBoxes();
    const before = tables.read('boxes');
    expectOk(await store.put('boxes', 'a', box('Shop'), first.revision));
    await tables.settled();
    const after = tables.read('boxes');
    expect(after?.map(({ value }) => value.name)).toEqual(['Shop', 'Truck']);
    expect(after?.[0]).not.toBe(before?.[0]);
    expect(after?.[1]).toBe(before?.[1]);
  });

  it('tell nobody of a reading that found nothing new', async () => {
    const { store, tables, told } = await watchedBoxes();
    const [before, toldBefore] = [tables.read('boxes'), told()];
    expectOk(await store.rewrite((current) => current));
    await tables.settled();
    expect(tables.read('boxes')).toBe(before);
    expect(told()).toBe(toldBefore);
  });

  it('tell of a removed record', async () => {
    const { store, tables, first } = await watchedBoxes();
    expectOk(await store.remove('boxes', 'a', first.revision));
    await tables.settled();
    expect(tables.read('boxes')?.map(({ id }) => id)).toEqual(['b']);
  });
});

describe('a write through the tables', () => {
  it('stands there once it is kept, without reading the table again', async () => {
    const { store, tables, first, told } = await watchedBoxes();
    const [before, toldBefore] = [tables.read('boxes'), told()];
    let lists = 0;
    const list = store.list;
    store.list = (table) => {
      lists += 1;
      return list(table);
    };
    const written = expectOk(await tables.put('boxes', 'a', box('Shop'), first.revision));
    await tables.settled();
    expect(lists).toBe(0);
    expect(told()).toBe(toldBefore + 1);
    expect(tables.read('boxes')?.[0]).toBe(written);
    expect(tables.read('boxes')?.[1]).toBe(before?.[1]);
    expect(tables.read('boxes')).toEqual(await store.list('boxes'));
  });

  it('that is refused changes nothing, and what stands in its place is read', async () => {
    const { store, tables, first } = await watchedBoxes();
    const [theirs, mine] = [
      store.put('boxes', 'a', box('Shop'), first.revision),
      tables.put('boxes', 'a', box('Shed'), first.revision),
    ];
    expectOk(await theirs);
    expect((await mine).ok).toBe(false);
    await tables.settled();
    expect(tables.read('boxes')?.map(({ value }) => value.name)).toEqual(['Shop', 'Truck']);
  });

  it('of a new record puts it where the store has it', async () => {
    const { store, tables } = await watchedBoxes();
    expectOk(await tables.put('boxes', 'c', box('Shop'), null));
    await tables.settled();
    expect(tables.read('boxes')).toEqual(await store.list('boxes'));
    expect(tables.read('boxes')).toHaveLength(3);
  });

  it('in a row, each on top of the one before, ends with the last', async () => {
    const { tables, first } = await watchedBoxes();
    const writes = [1, 2, 3].map((n) => tables.put('boxes', 'a', box(`Shop ${n}`), first.revision + n - 1));
    for (const written of await Promise.all(writes)) expectOk(written);
    await tables.settled();
    expect(tables.read('boxes')?.[0]?.value.name).toBe('Shop 3');
  });
});
