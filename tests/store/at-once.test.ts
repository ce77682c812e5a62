import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { writeTo } from '@/components/store/use-write';
import type { ToastWords } from '@/components/ui/toast';
import { expectOk } from '@/lib/result/result';
import type { Stored } from '@/lib/store/records';
import { isKept } from '@/lib/store/shown-ahead';
import type { Store } from '@/lib/store/store-type';
import { type TableCache, tableCache } from '@/lib/store/table-cache';
import { box, closeTabs, freshBrowser, openTab, settled } from './tabs';

const KEY = { table: 'boxes', id: 'a' } as const;
type Boxes = readonly Stored<{ readonly name: string }>[] | null;

/** A store whose writes wait until they are let through. */
function heldBack(store: Store) {
  const waiting: (() => void)[] = [];
  const put: Store['put'] = async (...asked) => {
    await new Promise<void>((resolve) => waiting.push(resolve));
    return store.put(...asked);
  };
  return {
    slow: { ...store, put },
    waiting,
    /** Lets go what waits, and has all of it answered. */
    letGo: async () => {
      for (const go of waiting.splice(0)) go();
      await settled();
    },
  };
}

const namesOf = (rows: Boxes): readonly string[] | undefined => rows?.map(({ value }) => value.name);

let store: Store;
let tables: TableCache;
let held: ReturnType<typeof heldBack>;
let said: ToastWords[];
/** What was shown, each time somebody was told to look. */
let seen: (readonly string[] | undefined)[];
let write: ReturnType<typeof writeTo>;

beforeEach(async () => {
  freshBrowser();
  store = await openTab();
  expectOk(await store.put('boxes', 'a', box('Trailer'), null));
  expectOk(await store.put('boxes', 'b', box('Truck'), null));
  held = heldBack(store);
  tables = tableCache(held.slow);
  said = [];
  seen = [];
  tables.watch('boxes', () => seen.push(namesOf(tables.shown('boxes'))));
  await tables.settled();
  seen = [];
  write = writeTo({ store: { ...held.slow, put: tables.put }, tables }, (words) => said.push(words));
});
afterEach(closeTabs);

const rename = (name: string) => write.change(KEY, (now) => ({ ...now, name }), `It is a ${name}.`);
const addSize = (size: number) =>
  write.change(
    KEY,
    (now) => ({ ...now, entries: [...now.entries, { size, count: 2 }] }),
    `${size} is added.`,
  );
/** What is no record of its table. */
const spoil = () => write.change(KEY, () => box('Odd', -1), 'It is odd.');
const stored = async () => (await store.get('boxes', 'a'))!;

describe('an act', () => {
  it('is shown before it is kept, and said once it is', async () => {
    const before = tables.read('boxes');
    const act = rename('Van');
    await settled();
    expect(namesOf(tables.shown('boxes'))).toEqual(['Van', 'Truck']);
    expect(tables.shown('boxes')?.map(isKept)).toEqual([false, true]);
    // Whoever keeps or sends what stands there knows nothing of it yet.
    expect(tables.read('boxes')).toBe(before);
    expect(said).toEqual([]);
    await held.letGo();
    expect(await act).toBeUndefined();
    expect(tables.shown('boxes')).toBe(tables.read('boxes'));
    expect(tables.shown('boxes')).toEqual(await store.list('boxes'));
    expect(said.map(({ text }) => text)).toEqual(['It is a Van.']);
    expect(seen).toEqual([
      ['Van', 'Truck'],
      ['Van', 'Truck'],
    ]);
  });

  it('is shown as it was after Undo', async () => {
    void rename('Van');
    await settled();
    await held.letGo();
    said.at(-1)?.act?.do();
    await settled();
    await held.letGo();
    expect(namesOf(tables.shown('boxes'))).toEqual(['Trailer', 'Truck']);
    expect((await stored()).value.name).toBe('Trailer');
  });

  it('that the store refuses is taken back, with the sentence', async () => {
    const act = spoil();
    await settled();
    expect(namesOf(tables.shown('boxes'))).toEqual(['Odd', 'Truck']);
    await held.letGo();
    expect(await act).toEqual(expect.any(String));
    expect(said.map(({ text }) => text)).toEqual([await act]);
    expect(namesOf(tables.shown('boxes'))).toEqual(['Trailer', 'Truck']);
    expect(tables.shown('boxes')).toBe(tables.read('boxes'));
  });

  it('on a closed database is taken back, with the sentence', async () => {
    const act = rename('Van');
    await settled();
    store.close();
    await held.letGo();
    expect(said.map(({ text }) => text)).toEqual([await act]);
    expect(namesOf(tables.shown('boxes'))).toEqual(['Trailer', 'Truck']);
  });

  it('whose writing throws is taken back', async () => {
    held.slow.put = () => Promise.reject(new Error('the disk is on fire'));
    await expect(rename('Van')).rejects.toThrow('the disk is on fire');
    await settled();
    expect(namesOf(tables.shown('boxes'))).toEqual(['Trailer', 'Truck']);
  });

  it('goes on top of what another tab wrote meanwhile', async () => {
    const act = rename('Van');
    await settled();
    expectOk(await store.put('boxes', 'a', { ...box('Trailer', 500) }, (await stored()).revision));
    // Once refused, and once more on top of the other's.
    await held.letGo();
    await held.letGo();
    expect(await act).toBeUndefined();
    expect((await stored()).value).toEqual(box('Van', 500));
    expect(tables.shown('boxes')).toEqual(await store.list('boxes'));
  });

  it('is no longer shown over what another tab wrote and this one has read', async () => {
    const act = rename('Van');
    await settled();
    const theirs = { ...box('Bus', 500) };
    expectOk(await store.put('boxes', 'a', theirs, (await stored()).revision));
    expectOk(await store.rewrite((current) => current));
    await settled();
    expect(namesOf(tables.shown('boxes'))).toEqual(['Bus', 'Truck']);
    await held.letGo();
    await held.letGo();
    await act;
    expect(tables.shown('boxes')).toEqual(await store.list('boxes'));
  });

  it('is not shown any more where another tab removed the record', async () => {
    const act = rename('Van');
    await settled();
    expectOk(await store.remove('boxes', 'a', (await stored()).revision));
    await settled();
    expect(namesOf(tables.shown('boxes'))).toEqual(['Truck']);
    await held.letGo();
    expect(await act).toEqual(expect.any(String));
    expect(namesOf(tables.shown('boxes'))).toEqual(['Truck']);
  });

  it('stays on the screen while its table is read anew for another record', async () => {
    const act = rename('Van');
    await settled();
    const truck = (await store.get('boxes', 'b'))!;
    expectOk(await store.put('boxes', 'b', box('Lorry'), truck.revision));
    await settled();
    expect(namesOf(tables.shown('boxes'))).toEqual(['Van', 'Lorry']);
    await held.letGo();
    await act;
    expect(seen.every((names) => names?.[0] === 'Van')).toBe(true);
  });

  it('and another before the first is answered both stand, each once', async () => {
    const acts = [addSize(430), addSize(440)];
    await settled();
    while (held.waiting.length > 0) await held.letGo();
    expect(await Promise.all(acts)).toEqual([undefined, undefined]);
    expect((await stored()).value.entries.map(({ size }) => size)).toEqual([430, 440]);
    expect(tables.shown('boxes')).toEqual(await store.list('boxes'));
    expect(said.map(({ text }) => text)).toEqual(['430 is added.', '440 is added.']);
  });

  it('after one that is refused does not bring that back', async () => {
    const first = spoil();
    const second = addSize(440);
    await settled();
    while (held.waiting.length > 0) await held.letGo();
    expect(await first).toEqual(expect.any(String));
    expect(await second).toBeUndefined();
    expect((await stored()).value).toEqual({ ...box('Trailer'), entries: [{ size: 440, count: 2 }] });
    expect(tables.shown('boxes')).toEqual(await store.list('boxes'));
  });

  it('cannot be written on top of while it is only shown', async () => {
    void rename('Van');
    await settled();
    const shown = tables.shown('boxes')![0]!;
    await held.letGo();
    expect(await store.put('boxes', 'a', box('Bus'), shown.revision)).toMatchObject({
      ok: false,
      reason: { code: 'conflict' },
    });
  });
});

describe('in another tab an act', () => {
  it('is shown once it is kept, and not before', async () => {
    const other = tableCache(await openTab());
    other.watch('boxes', () => undefined);
    await settled();
    void rename('Van');
    await settled();
    expect(namesOf(other.shown('boxes'))).toEqual(['Trailer', 'Truck']);
    await held.letGo();
    expect(namesOf(other.shown('boxes'))).toEqual(['Van', 'Truck']);
  });
});
