import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import {
  type Backup,
  type BackupProblem,
  readBackup,
  sealBackup,
  writeBackup,
} from '@/lib/store/backup-file';
import { type ImportMode, previewImport, withBackup } from '@/lib/store/backup-import';
import { crc32 } from '@/lib/store/crc32';
import { newestVersion } from '@/lib/store/migrations';
import type { Store } from '@/lib/store/store-type';
import { undoRewrite } from '@/lib/store/undo-rewrite';
import { box, closeTabs, freshBrowser, machine, openTab, ticking } from './tabs';
import { trailer } from './trailer';

beforeEach(freshBrowser);
afterEach(closeTabs);

const MADE = '2027-01-16T20:00:00.000Z';

async function backupOf(store: Store): Promise<string> {
  return writeBackup(await store.snapshot(), MADE);
}

const importBackup = (store: Store, backup: Backup, mode: ImportMode) =>
  store.rewrite((current) => withBackup(current, { ...backup, name: 'phone.json' }, mode));

async function fullBackup(): Promise<string> {
  const store = await openTab();
  await store.rewrite(trailer);
  const text = await backupOf(store);
  store.close();
  freshBrowser();
  return text;
}

function problem(text: string): BackupProblem {
  const result = readBackup(text);
  if (result.ok) throw new Error('was read');
  return result.reason;
}

/** Changes the parsed file and seals it again, as someone who knows the format could. */
function edited(
  text: string,
  change: (
    file: Record<string, unknown> & { tables: Record<string, unknown[]>; counts: Record<string, number> },
  ) => void,
): string {
  const file = JSON.parse(text);
  change(file);
  delete file.checksum;
  return sealBackup(`${JSON.stringify({ ...file, checksum: '00000000' }, null, 1)}\n`);
}

describe('the checksum', () => {
  it('is the CRC-32 of the standards', () => {
    // "123456789" -> CBF43926: check value of CRC-32 in the "Catalogue of parametrised CRC algorithms" (from memory);
    // zlib and PNG (ISO 15948, annex D) use the same.
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
    expect(crc32(new Uint8Array())).toBe(0);
  });
});

describe('a backup file', () => {
  it('brings everything back, in a browser that has never been here', async () => {
    const text = await fullBackup();
    const backup = expectOk(readBackup(text));
    expect(backup.madeAt).toBe(MADE);
    const store = await openTab();
    expectOk(await importBackup(store, backup, 'replace'));
    expect(await backupOf(store)).toBe(text);
  });

  it('is plain JSON that says how many records of each kind are in it', async () => {
    const file = JSON.parse(await fullBackup());
    expect(file).toMatchObject({
      app: 'heavy-air',
      format: newestVersion(),
      madeAt: MADE,
      counts: { machines: 1, events: 1, log: 1 },
    });
    expect(file.tables.boxes[0].value.name).toBe('Anhänger');
  });

  it('is ASCII only, so that no mail program can spoil a letter', async () => {
    expect(/^[\n\x20-\x7e]*$/.test(await fullBackup())).toBe(true);
  });

  it('survives line ends of another system, a byte order mark and a cut last line end', async () => {
    const text = await fullBackup();
    for (const carried of [text.replaceAll('\n', '\r\n'), `\uFEFF${text}`, text.slice(0, -1)])
      expect(readBackup(carried).ok).toBe(true);
  });

  it('may be empty', async () => {
    expect(expectOk(readBackup(await backupOf(await openTab()))).tables.machines).toEqual([]);
  });
});

describe('a file that cannot be imported', () => {
  it('notices every single flipped bit of every byte', async () => {
    const bytes = new TextEncoder().encode(await fullBackup());
    const decoder = new TextDecoder();
    const unnoticed: string[] = [];
    for (let at = 0; at < bytes.length; at++)
      for (let bit = 0; bit < 8; bit++) {
        const flipped = bytes.slice();
        flipped[at] = (flipped[at] ?? 0) ^ (1 << bit);
        if (readBackup(decoder.decode(flipped)).ok) unnoticed.push(`byte ${at}, bit ${bit}`);
      }
    expect(unnoticed).toEqual([]);
  }, 120_000);

  it('notices every other value of a byte too, wherever it is tried', async () => {
    const bytes = new TextEncoder().encode(await fullBackup());
    const places = [
      0,
      1,
      20,
      35,
      60,
      200,
      1000,
      bytes.length - 12,
      bytes.length - 5,
      bytes.length - 2,
      bytes.length - 1,
    ];
    const unnoticed = places.flatMap((at) =>
      Array.from({ length: 256 }, (_, value) => value)
        .filter((value) => value !== bytes[at])
        .filter((value) => {
          const changed = bytes.slice();
          changed[at] = value;
          return readBackup(new TextDecoder().decode(changed)).ok;
        }),
    );
    expect(unnoticed).toEqual([]);
  });

  it('is cut off, at any place', async () => {
    const text = await fullBackup();
    for (let length = 0; length < text.length - 1; length += 7)
      expect(readBackup(text.slice(0, length)).ok).toBe(false);
    expect(problem(text.slice(0, 500))).toEqual({ code: 'damaged', what: 'shape' });
  });

  it('is no backup of this app', () => {
    expect(problem('')).toEqual({ code: 'not-json' });
    expect(problem('Time;Temp\n18:00;-9')).toEqual({ code: 'not-json' });
    for (const foreign of ['null', '[]', '42', '{"app":"another"}', '{"tables":{}}'])
      expect(problem(foreign)).toEqual({ code: 'foreign' });
  });

  it('is from a newer app', async () => {
    const text = edited(await fullBackup(), (file) =>
      Object.assign(file, { format: newestVersion() + 1, shelves: {} }),
    );
    expect(problem(text)).toEqual({
      code: 'newer-format',
      format: newestVersion() + 1,
      newest: newestVersion(),
    });
  });

  it('is too large to be one', () => {
    expect(problem(' '.repeat(20_000_001))).toEqual({ code: 'too-large', limit: 20_000_000 });
  });

  it('was edited by hand', async () => {
    const text = await fullBackup();
    expect(problem(text.replace('"main": 410', '"main": 411'))).toEqual({
      code: 'damaged',
      what: 'checksum',
    });
    expect(problem(edited(text, (file) => delete file.counts.log))).toEqual({
      code: 'damaged',
      what: 'counts',
    });
    expect(problem(edited(text, (file) => file.tables.log?.pop()))).toEqual({
      code: 'damaged',
      what: 'counts',
    });
    expect(problem(edited(text, (file) => Object.assign(file.tables, { gearboxes: [] })))).toEqual({
      code: 'damaged',
      what: 'counts',
    });
    expect(problem(edited(text, (file) => Object.assign(file, { extra: 1 })))).toEqual({
      code: 'damaged',
      what: 'shape',
    });
    const twice = edited(text, (file) => {
      file.tables.boxes?.push(file.tables.boxes[0]);
      file.counts.boxes = 2;
    });
    expect(problem(twice)).toEqual({ code: 'damaged', what: 'counts' });
  });

  it('holds a record that is none, and says which field', async () => {
    const text = edited(await fullBackup(), (file) =>
      Object.assign(file.tables, {
        boxes: [{ id: 'box1', updatedAt: MADE, value: { name: 'x', entries: [{ size: -1, count: 1 }] } }],
      }),
    );
    expect(problem(text)).toMatchObject({
      code: 'bad-record',
      table: 'boxes',
      id: 'box1',
      issues: [{ path: 'entries.0.size' }],
    });
  });
});

describe('an import', () => {
  const earlier = Date.UTC(2027, 0, 10);
  const later = Date.UTC(2027, 0, 20);

  /** Here: a (older), b (newer), c, same. In the file: a (newer), b (older), d, same. */
  async function twoTrailers(): Promise<{ readonly store: Store; readonly file: string }> {
    const there = await openTab({ now: ticking(Date.UTC(2027, 0, 15)), device: () => 'phone' });
    for (const [id, size] of [
      ['a', 401],
      ['b', 402],
      ['d', 404],
      ['same', 405],
    ] as const)
      await there.put('boxes', id, box('file', size), null);
    const file = await backupOf(there);
    there.close();
    freshBrowser();
    const old = await openTab({ now: ticking(earlier), device: () => 'laptop' });
    for (const [id, size] of [
      ['a', 411],
      ['same', 405],
    ] as const)
      await old.put('boxes', id, box(id === 'same' ? 'file' : 'here', size), null);
    old.close();
    const store = await openTab({ now: ticking(later), device: () => 'laptop' });
    for (const [id, size] of [
      ['b', 412],
      ['c', 413],
    ] as const)
      await store.put('boxes', id, box('here', size), null);
    return { store, file };
  }

  const contents = async (store: Store): Promise<string[]> =>
    (await store.list('boxes'))
      .map(({ id, value }) => `${id} ${value.name} ${value.entries[0]?.size}`)
      .sort();

  it('shows first what it would do, field by field', async () => {
    const { store, file } = await twoTrailers();
    const backup = { ...expectOk(readBackup(file)), name: 'phone.json' };
    const { changes, tables } = previewImport(backup, await store.snapshot());
    const told = changes.map(({ id, fate, fields }) => [
      id,
      fate,
      fields.map(({ path, how }) => `${path} ${how}`).sort(),
    ]);
    // Nobody knows which of two boxes that never met is the newer: the sizes of both stay, one name is set aside.
    expect(told).toEqual([
      ['a', 'changed', ['entries/401 added', 'name taken']],
      ['b', 'changed', ['entries/402 added', 'name taken']],
      ['d', 'new', []],
    ]);
    expect(tables.find(({ table }) => table === 'boxes')).toEqual({ table: 'boxes', inFile: 4, lost: 3 });
    expect(await contents(store)).toEqual(['a here 411', 'b here 412', 'c here 413', 'same file 405']);
  });

  it('merges: what is new comes in, both sizes stay, and the name that loses is set aside', async () => {
    const { store, file } = await twoTrailers();
    expectOk(await importBackup(store, expectOk(readBackup(file)), 'merge'));
    const sizes = (await store.list('boxes')).map(({ id, value }) => [
      id,
      value.entries.map(({ size }) => size).sort(),
    ]);
    expect(sizes.sort()).toEqual([
      ['a', [401, 411]],
      ['b', [402, 412]],
      ['c', [413]],
      ['d', [404]],
      ['same', [405]],
    ]);
    expect(store.health().setAside.map(({ id, path, text, from }) => [id, path, text, from?.name])).toEqual([
      ['a', 'name', '"here"', 'phone.json'],
      ['b', 'name', '"here"', 'phone.json'],
    ]);
  });

  it('merged a second time changes nothing', async () => {
    const { store, file } = await twoTrailers();
    await importBackup(store, expectOk(readBackup(file)), 'merge');
    const { before, after } = expectOk(await importBackup(store, expectOk(readBackup(file)), 'merge'));
    expect(after).toEqual(before);
  });

  it('replaces: the file and nothing else', async () => {
    const { store, file } = await twoTrailers();
    expectOk(await importBackup(store, expectOk(readBackup(file)), 'replace'));
    expect(await contents(store)).toEqual(['a file 401', 'b file 402', 'd file 404', 'same file 405']);
  });

  it.each(['merge', 'replace'] as const)('(%s) can be undone', async (mode) => {
    const { store, file } = await twoTrailers();
    const before = await backupOf(store);
    const done = expectOk(await importBackup(store, expectOk(readBackup(file)), mode));
    expectOk(await undoRewrite(store, done));
    expect(await backupOf(store)).toBe(before);
  });

  it('when undone leaves alone what was changed since', async () => {
    const { store, file } = await twoTrailers();
    const done = expectOk(await importBackup(store, expectOk(readBackup(file)), 'replace'));
    const a = await store.get('boxes', 'a');
    await store.put('boxes', 'a', box('edited after the import', 499), a?.revision ?? null);
    await store.put('boxes', 'new', box('new', 500), null);
    await store.put('machines', 'm', machine('new too'), null);
    await undoRewrite(store, done);
    expect(await contents(store)).toEqual([
      'a edited after the import 499',
      'b here 412',
      'c here 413',
      'new new 500',
      'same file 405',
    ]);
    expect(await store.list('machines')).toHaveLength(1);
  });

  it('leaves what another tab is editing as a conflict, not a loss', async () => {
    const { store, file } = await twoTrailers();
    const other = await openTab();
    const seen = await other.get('boxes', 'a');
    await importBackup(store, expectOk(readBackup(file)), 'merge');
    expect(await other.put('boxes', 'a', box('mine', 1), seen?.revision ?? null)).toMatchObject({
      reason: { code: 'conflict', mine: { name: 'mine' }, theirs: { value: { name: 'file' } } },
    });
  });
});
