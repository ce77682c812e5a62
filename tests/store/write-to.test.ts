import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Write, writeTo } from '@/components/store/use-write';
import { type WriteAll, writeAllTo } from '@/components/store/use-write-all';
import type { ToastWords } from '@/components/ui/toast';
import { expectOk } from '@/lib/result/result';
import type { Store } from '@/lib/store/store-type';
import { tableCache } from '@/lib/store/table-cache';
import { box, closeTabs, freshBrowser, machine, openTab } from './tabs';

let store: Store;
let write: Write;
let writeAll: WriteAll;
let said: ToastWords[];
let reads: number;
let counted: Store;

beforeEach(async () => {
  freshBrowser();
  store = await openTab();
  said = [];
  reads = 0;
  counted = {
    ...store,
    list: (table) => {
      reads += 1;
      return store.list(table);
    },
  };
  const opened = { store: counted, tables: tableCache(counted) };
  write = writeTo(opened, (words) => said.push(words));
  writeAll = writeAllTo(opened, (words) => said.push(words));
});
afterEach(closeTabs);

const names = async () => (await store.list('boxes')).map(({ value }) => value.name);
const stored = async (id: string) => (await store.get('boxes', id))!;
const undo = async () => said.at(-1)?.act?.do();
const put = async (id: string, name: string) => expectOk(await store.put('boxes', id, box(name), null));
const KEY = { table: 'boxes', id: 'a' } as const;

describe('the door to the store', () => {
  it('says what was done and takes each act back', async () => {
    expect(await write.add('boxes', box('Truck'), 'The truck is added.', 'a')).toBeUndefined();
    expect(said.at(-1)).toMatchObject({ text: 'The truck is added.', act: { label: 'Undo' } });
    await undo();
    expect(await names()).toEqual([]);
    await put('b', 'Trailer');
    await write.change({ table: 'boxes', id: 'b' }, (now) => ({ ...now, name: 'Van' }), 'It is a van.');
    expect(await names()).toEqual(['Van']);
    await undo();
    expect(await names()).toEqual(['Trailer']);
    await write.remove('boxes', await stored('b'), 'The trailer is deleted.');
    expect(await names()).toEqual([]);
    await undo();
    expect(await names()).toEqual(['Trailer']);
  });

  it('leaves what was changed again since, and says so', async () => {
    await put('a', 'Truck');
    await write.change(KEY, (now) => ({ ...now, name: 'Van' }), 'It is a van.');
    await store.put('boxes', 'a', box('Bus'), (await stored('a')).revision);
    await undo();
    expect(await names()).toEqual(['Bus']);
    expect(said.at(-1)?.text).toContain('Not taken back');
  });

  it('takes back only the part that the act changed, on top of what another tab changed beside it', async () => {
    await put('a', 'Truck');
    await write.change(KEY, (now) => ({ ...now, name: 'Van' }), 'It is a van.', {
      part: ({ name }) => name,
      back: (now, { name }) => ({ ...now, name }),
    });
    const other = { name: 'Van', entries: [{ size: 500, count: 1 }] };
    await store.put('boxes', 'a', other, (await stored('a')).revision);
    await undo();
    expect((await stored('a')).value).toEqual({ ...other, name: 'Truck' });
  });

  it('says why nothing was kept: of a form beside the form, of a press where all can see it', async () => {
    const missing = await write.change(KEY, (now) => now, 'It is a van.');
    expect(missing).toContain('changed or removed meanwhile');
    expect(said.map(({ text }) => text)).toEqual([missing]);
    await put('a', 'Truck');
    expect(await write.add('boxes', box('Van'), null, 'a')).toBe(missing);
    expect(said).toHaveLength(1);
  });

  it('saves a form over what another tab wrote only when asked a second time', async () => {
    const seen = expectOk(await store.put('machines', 'm', machine('Blue 600'), null));
    expectOk(await store.put('machines', 'm', machine('Green 700'), seen.revision));
    const change = () => machine('Red 800');
    const first = await write.over({ table: 'machines', stored: seen }, change, 'Red 800 is saved.');
    expect(first.refused).toContain('it is now called Green 700');
    expect((await store.get('machines', 'm'))?.value.machine.name).toBe('Green 700');
    const second = await write.over({ table: 'machines', stored: first.stored }, change, 'Red 800 is saved.');
    expect(second.refused).toBeUndefined();
    expect((await store.get('machines', 'm'))?.value.machine.name).toBe('Red 800');
    await undo();
    expect((await store.get('machines', 'm'))?.value.machine.name).toBe('Green 700');
  });

  it('writes many records or none', async () => {
    await put('a', 'Truck');
    const before = await store.snapshot();
    const broken = await writeAll(
      (current) => ({
        ...current,
        boxes: [...current.boxes, { id: 'b', value: box('Van') }],
        machines: [{ id: 'm', value: { ...machine('Blue 600'), machine: { name: '' } } as never }],
      }),
      null,
    );
    expect(broken).toMatchObject({ ok: false, reason: expect.stringContaining('Nothing was changed') });
    expect(await writeAll(() => 'The night is gone.', 'Added.')).toMatchObject({
      reason: 'The night is gone.',
    });
    expect(await store.snapshot()).toEqual(before);
    const back = expectOk(
      await writeAll((now) => ({ ...now, boxes: [...now.boxes, { id: 'b', value: box('Van') }] }), null),
    );
    expect(await names()).toEqual(['Truck', 'Van']);
    await back();
    expect(await names()).toEqual(['Truck']);
  });

  it('reads a table that is on screen for what is new in it alone, and hands it on before the act is said', async () => {
    const tables = tableCache(counted);
    tables.watch('boxes', () => undefined);
    await tables.settled();
    const seen: (string | undefined)[] = [];
    const door = writeTo({ store, tables }, () => seen.push(tables.read('boxes')?.[0]?.value.name));
    reads = 0;
    await door.add('boxes', box('Truck'), 'The truck is added.', 'a');
    await door.change(KEY, (now) => ({ ...now, name: 'Van' }), 'It is a van.');
    expect({ reads, seen }).toEqual({ reads: 1, seen: ['Truck', 'Van'] });
  });
});
