import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { DATABASE_NAME } from '@/lib/store/database-name';
import { newestVersion } from '@/lib/store/migrations';
import { faultyDisk } from './faulty-disk';
import { box, closeTabs, freshBrowser, hearing, openTab, settled, ticking } from './tabs';

beforeEach(freshBrowser);
afterEach(() => {
  closeTabs();
  vi.unstubAllGlobals();
});

describe('a browser that keeps nothing', () => {
  it('is worked in as long as the page lives, and the health says so', async () => {
    vi.stubGlobal('indexedDB', undefined);
    const store = await openTab();
    expect(store.health()).toEqual({ keeps: 'memory', because: 'no-database', promised: null, setAside: [] });
    expect(expectOk(await store.put('boxes', 'b', box('b', 400), null)).revision).toBe(1);
    expect((await store.list('boxes')).map(({ id }) => id)).toEqual(['b']);
    expect(await store.put('boxes', 'b', box('late', 400), null)).toMatchObject({
      reason: { code: 'conflict' },
    });
    expect((await store.retry()).because).toBe('no-database');
  });

  it.each([
    ['SecurityError', 'no-database'],
    ['InvalidStateError', 'no-database'],
    ['UnknownError', 'failed'],
    ['VersionError', 'newer-app'],
  ])('%s when opening means %s', async (name, because) => {
    vi.stubGlobal('indexedDB', {
      open: () => {
        throw new DOMException('not here', name);
      },
    });
    expect((await openTab()).health()).toMatchObject({ keeps: 'memory', because });
  });
});

describe('a full disk', () => {
  it('costs nothing that was entered: it stays in memory, and goes to disk once there is room', async () => {
    const disk = faultyDisk();
    const store = await openTab({ open: disk.open });
    const heard = hearing(store);
    await store.put('boxes', 'old', box('old', 400), null);
    disk.fault = 'QuotaExceededError';
    expect(expectOk(await store.put('boxes', 'new', box('new', 410), null)).revision).toBe(1);
    await store.put('boxes', 'old', box('old, edited', 400), 1);
    await settled();
    expect(store.health()).toMatchObject({ keeps: 'memory', because: 'full' });
    expect(heard).toContainEqual({ kind: 'health', health: expect.objectContaining({ because: 'full' }) });
    expect((await store.list('boxes')).map(({ value }) => value.name)).toEqual(['old, edited', 'new']);
    expect((await store.retry()).because).toBe('full');
    disk.fault = null;
    expect(await store.retry()).toMatchObject({ keeps: 'disk', because: null });
    store.close();
    const later = await openTab();
    expect((await later.list('boxes')).map(({ value, revision }) => `${value.name} ${revision}`)).toEqual([
      'old, edited 2',
      'new 1',
    ]);
  });

  it('is told from a transaction that says only that it was aborted', async () => {
    const store = await openTab();
    await store.put('boxes', 'b', box('b', 400), null);
    const transaction = IDBDatabase.prototype.transaction;
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...args) {
      const made = transaction.apply(this, args);
      if (args[1] !== 'readwrite') return made;
      const full = new DOMException('no room', 'QuotaExceededError');
      Object.defineProperty(made, 'error', { get: () => full });
      const put = IDBObjectStore.prototype.put;
      vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementationOnce(function (
        this: IDBObjectStore,
        value,
      ) {
        const request = put.call(this, value);
        made.abort();
        return request;
      });
      return made;
    });
    expectOk(await store.put('boxes', 'c', box('c', 400), null));
    expect(store.health()).toMatchObject({ keeps: 'memory', because: 'full' });
  });

  it('lets the record of the other tab stand and sets mine aside where both changed it', async () => {
    const disk = faultyDisk();
    const mine = await openTab({ open: disk.open });
    await mine.put('boxes', 'b', box('first', 400), null);
    disk.fault = 'QuotaExceededError';
    await mine.put('boxes', 'b', box('mine', 410), 1);
    const other = await openTab();
    await other.put('boxes', 'b', box('theirs', 420), 1);
    disk.fault = null;
    const health = await mine.retry();
    expect((await mine.get('boxes', 'b'))?.value.name).toBe('theirs');
    expect(health.setAside).toMatchObject([{ why: 'changed-twice', table: 'boxes', id: 'b', issues: [] }]);
    expect(JSON.parse(health.setAside[0]?.text ?? '')).toEqual(box('mine', 410));
  });

  it('does not set aside what both changed alike', async () => {
    const disk = faultyDisk();
    const mine = await openTab({ open: disk.open });
    await mine.put('boxes', 'b', box('first', 400), null);
    disk.fault = 'QuotaExceededError';
    await mine.put('boxes', 'b', box('same', 410), 1);
    await (await openTab()).put('boxes', 'b', box('same', 410), 1);
    disk.fault = null;
    expect((await mine.retry()).setAside).toEqual([]);
  });
});

describe('a disk that fails', () => {
  it('is opened once more: a phone cuts connections in the background', async () => {
    const disk = faultyDisk();
    const store = await openTab({ open: disk.open });
    await store.put('boxes', 'b', box('b', 400), null);
    const transact = vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementationOnce(() => {
      throw new DOMException('the connection is closing', 'InvalidStateError');
    });
    expect((await store.list('boxes')).map(({ id }) => id)).toEqual(['b']);
    expect(transact).toHaveBeenCalled();
    expect(store.health()).toMatchObject({ keeps: 'disk', because: null });
  });

  it('leaves everything last seen on the screen where it fails for good', async () => {
    const disk = faultyDisk(null, 'everything');
    const before = await openTab();
    await before.put('boxes', 'never read in this tab', box('b', 400), null);
    const store = await openTab({ open: disk.open, now: ticking(Date.UTC(2027, 0, 17)) });
    await store.put('boxes', 'c', box('c', 400), null);
    disk.fault = 'UnknownError';
    expect((await store.list('boxes')).map(({ id }) => id)).toEqual(['never read in this tab', 'c']);
    expect(store.health()).toMatchObject({ keeps: 'memory', because: 'failed' });
    await store.put('boxes', 'd', box('d', 400), null);
    disk.fault = null;
    await store.retry();
    expect((await before.list('boxes')).map(({ id }) => id)).toEqual(['never read in this tab', 'c', 'd']);
  });
});

describe('tabs of different ages', () => {
  it('an old one steps back when a newer app opens the database, and keeps what it showed', async () => {
    const old = await openTab();
    await old.put('boxes', 'b', box('b', 400), null);
    const newer = await openDB(DATABASE_NAME, newestVersion() + 1);
    await settled();
    expect(old.health()).toMatchObject({ keeps: 'memory', because: 'newer-app' });
    expect((await old.list('boxes')).map(({ id }) => id)).toEqual(['b']);
    expectOk(await old.put('boxes', 'b', box('in the old tab', 400), 1));
    expect((await old.retry()).because).toBe('newer-app');
    newer.close();
  });

  it('an old app on newer data works in memory and touches nothing', async () => {
    const newer = await openDB(DATABASE_NAME, newestVersion() + 1);
    newer.close();
    const store = await openTab();
    expect(store.health()).toMatchObject({ keeps: 'memory', because: 'newer-app' });
    expect((await openDB(DATABASE_NAME)).version).toBe(newestVersion() + 1);
  });

  it('a new one does not wait for an old one that holds on', async () => {
    const holding = await openDB(DATABASE_NAME, 1);
    const migrations = [1, 2].map((version) => ({ version, value: (_: string, value: unknown) => value }));
    const { openDatabase } = await import('@/lib/store/database');
    const store = await openTab({ open: (onSuperseded) => openDatabase({ migrations, onSuperseded }) });
    expect(store.health()).toMatchObject({ keeps: 'memory', because: 'blocked' });
    await store.put('boxes', 'b', box('b', 400), null);
    holding.close();
    await settled();
    expect(await store.retry()).toMatchObject({ keeps: 'disk', because: null });
    expect((await store.get('boxes', 'b'))?.value.name).toBe('b');
  });
});
