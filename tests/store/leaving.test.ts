import { IDBOpenDBRequest } from 'fake-indexeddb';
import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { openDatabase } from '@/lib/store/database';
import { DATABASE_NAME } from '@/lib/store/database-name';
import type { StoreOptions } from '@/lib/store/open-store';
import type { Store } from '@/lib/store/store-type';
import { box, closeTabs, freshBrowser, hearing, openTab, settled } from './tabs';

beforeEach(freshBrowser);
afterEach(closeTabs);

const leave = (page: EventTarget) => page.dispatchEvent(new Event('pagehide'));
const comeBack = (page: EventTarget) => page.dispatchEvent(new Event('pageshow'));

/** Every transaction of all tabs after each other, and which have ended. */
function watchTransactions() {
  const running = new Set<IDBTransaction>();
  const begin = IDBDatabase.prototype.transaction;
  vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...args) {
    const made = begin.apply(this, args);
    running.add(made);
    const ended = (): void => void running.delete(made);
    made.addEventListener('complete', ended);
    made.addEventListener('abort', ended);
    return made;
  });
  return running;
}

describe('a page that is left', () => {
  it.each([
    ['reading', (store: Store) => store.list('boxes')],
    ['writing', (store: Store) => store.put('boxes', 'c', box('c', 400), null)],
    ['importing', (store: Store) => store.rewrite((current) => current)],
  ])('in the middle of %s leaves no transaction under way', async (_, act) => {
    const page = new EventTarget();
    const running = watchTransactions();
    const store = await openTab({ page });
    await store.put('boxes', 'b', box('b', 400), null);
    const getAll = IDBObjectStore.prototype.getAll;
    let underWay = 0;
    vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementationOnce(function (
      this: IDBObjectStore,
      range,
    ) {
      const request = getAll.call(this, range);
      queueMicrotask(() => {
        underWay = running.size;
        leave(page);
      });
      return request;
    });
    void act(store);
    await settled();
    expect(underWay).toBe(1);
    expect(running.size).toBe(0);
    expect(await (await openTab()).list('boxes')).toHaveLength(1);
  });

  it('does not hold the database while it is being opened', async () => {
    const page = new EventTarget();
    const opening = openTab({ page });
    leave(page);
    expect(expectOk(await (await openTab()).put('boxes', 'b', box('b', 400), null)).revision).toBe(1);
    comeBack(page);
    expect((await (await opening).list('boxes')).map(({ id }) => id)).toEqual(['b']);
  });

  it('asks nothing of the database while it is away', async () => {
    const page = new EventTarget();
    const store = await openTab({ page });
    leave(page);
    const begin = vi.spyOn(IDBDatabase.prototype, 'transaction');
    const read = store.list('boxes');
    await settled();
    expect(begin).not.toHaveBeenCalled();
    comeBack(page);
    expect(await read).toEqual([]);
  });
});

describe('a page found again by Back', () => {
  it('makes the write that leaving cut off, once', async () => {
    const page = new EventTarget();
    const store = await openTab({ page });
    const writing = store.put('boxes', 'b', box('b', 400), null);
    leave(page);
    await settled();
    comeBack(page);
    expect(expectOk(await writing).revision).toBe(1);
    expect(store.health()).toMatchObject({ keeps: 'disk', because: null });
    expect((await (await openTab()).get('boxes', 'b'))?.revision).toBe(1);
  });

  it('keeps a write that was handed over before it was left', async () => {
    const page = new EventTarget();
    const store = await openTab({ page });
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementationOnce(function (this: IDBObjectStore, value) {
      const request = put.call(this, value);
      queueMicrotask(() => leave(page));
      return request;
    });
    void store.put('boxes', 'b', box('b', 400), null);
    await settled();
    expect((await (await openTab()).get('boxes', 'b'))?.revision).toBe(1);
  });

  it('tells everybody to read again, and they find what was written on the pages between', async () => {
    const page = new EventTarget();
    const store = await openTab({ page });
    await store.put('boxes', 'b', box('before', 400), null);
    await settled();
    const heard = hearing(store);
    leave(page);
    const between = await openTab();
    await between.put('boxes', 'b', box('between', 410), 1);
    between.close();
    comeBack(page);
    await settled();
    expect(heard).toContainEqual({ kind: 'everything', origin: 'other-tab' });
    expect((await store.get('boxes', 'b'))?.value.name).toBe('between');
    expect(expectOk(await store.put('boxes', 'b', box('after', 420), 2)).revision).toBe(3);
  });

  it('does not take the first showing of a page for a return', async () => {
    const page = new EventTarget();
    const store = await openTab({ page });
    const heard = hearing(store);
    comeBack(page);
    await settled();
    expect(heard.filter(({ kind }) => kind === 'everything')).toEqual([]);
  });
});

const impatient: StoreOptions['open'] = (onSuperseded, presence) =>
  openDatabase({ onSuperseded, presence, patienceMs: 500 });

/** Holds the database as a page does that was left in the middle of a transaction: everybody else waits. */
async function lockedDatabase() {
  const database = await openDB(DATABASE_NAME);
  const transaction = database.transaction(['records', 'aside'], 'readwrite');
  let held = true;
  const hold = async (): Promise<void> => {
    while (held) await transaction.objectStore('records').get(['', '']);
  };
  const ended = hold();
  return async () => {
    held = false;
    await ended;
    await transaction.done;
    database.close();
  };
}

describe('a database that does not answer', () => {
  it('is waited for some time only when it is opened; then work goes on in memory, and the health says so', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => new IDBOpenDBRequest());
    const store = await openTab({ open: impatient });
    expect(store.health()).toMatchObject({ keeps: 'memory', because: 'silent' });
  });

  it('is waited for no longer where it begins to be made and never is', async () => {
    const listen = IDBOpenDBRequest.prototype.addEventListener;
    const deaf = vi.spyOn(IDBOpenDBRequest.prototype, 'addEventListener');
    deaf.mockImplementation(function (this: IDBOpenDBRequest, ...[type, ...how]: Parameters<typeof listen>) {
      if (type !== 'success') listen.call(this, type, ...how);
    });
    const store = await openTab({ open: impatient });
    expect(store.health()).toMatchObject({ keeps: 'memory', because: 'silent' });
    expectOk(await store.put('boxes', 'b', box('b', 400), null));
    deaf.mockRestore();
    expect((await store.retry()).keeps).toBe('disk');
    expect((await (await openTab()).list('boxes')).map(({ id }) => id)).toEqual(['b']);
  });

  it('is waited for some time only when it is read, and loses nothing that is written meanwhile', async () => {
    const first = await openTab();
    await first.put('boxes', 'kept', box('kept', 400), null);
    const release = await lockedDatabase();
    const store = await openTab({ open: impatient });
    expect(store.health()).toMatchObject({ keeps: 'memory', because: 'silent' });
    expectOk(await store.put('boxes', 'new', box('new', 410), null));
    expect((await store.retry()).because).toBe('silent');
    await release();
    await vi.waitFor(async () => expect((await store.retry()).keeps).toBe('disk'));
    expect((await first.list('boxes')).map(({ id }) => id)).toEqual(['kept', 'new']);
  });

  it('that falls silent later takes what was seen and what is written into memory', async () => {
    const store = await openTab({ open: impatient });
    await store.put('boxes', 'b', box('b', 400), null);
    const release = await lockedDatabase();
    expect(expectOk(await store.put('boxes', 'b', box('while silent', 400), 1)).revision).toBe(2);
    expect(store.health()).toMatchObject({ keeps: 'memory', because: 'silent' });
    expect((await store.list('boxes')).map(({ value }) => value.name)).toEqual(['while silent']);
    await release();
    await vi.waitFor(async () => expect((await store.retry()).keeps).toBe('disk'));
    expect((await (await openTab()).get('boxes', 'b'))?.value.name).toBe('while silent');
  });

  it('is waited for no longer where it never says that a write is made', async () => {
    const store = await openTab({ open: impatient });
    const listen = IDBTransaction.prototype.addEventListener;
    vi.spyOn(IDBTransaction.prototype, 'addEventListener').mockImplementation(function (
      this: IDBTransaction,
      ...[type, ...how]: Parameters<typeof listen>
    ) {
      if (type !== 'complete') listen.call(this, type, ...how);
    });
    expect(expectOk(await store.put('boxes', 'b', box('b', 400), null)).revision).toBe(1);
    expect(store.health()).toMatchObject({ keeps: 'memory', because: 'silent' });
    expect((await store.list('boxes')).map(({ id }) => id)).toEqual(['b']);
  });

  it('is tried again when the page is found again by Back', async () => {
    const page = new EventTarget();
    await (await openTab()).put('boxes', 'kept', box('kept', 400), null);
    const release = await lockedDatabase();
    const store = await openTab({ open: impatient, page });
    leave(page);
    await release();
    comeBack(page);
    await vi.waitFor(() => expect(store.health().keeps).toBe('disk'));
    expect(await store.list('boxes')).toHaveLength(1);
  });
});
