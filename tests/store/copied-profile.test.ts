// @vitest-environment jsdom
import { afterEach, describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import type { Backing } from '@/lib/store/backing';
import { type Backup, readBackup, writeBackup } from '@/lib/store/backup-file';
import { withBackup } from '@/lib/store/backup-import';
import { asOfAnother, isOfCopy } from '@/lib/store/copied-profile';
import { ownDevice, renameDevice } from '@/lib/store/device';
import { memoryBacking } from '@/lib/store/memory';
import type { Store } from '@/lib/store/store-type';
import { box, closeTabs, openTab } from './tabs';

afterEach(() => {
  closeTabs();
  localStorage.clear();
  renameDevice();
});

const MADE = '2027-01-16T20:00:00.000Z';

/** A browser; `profile`: with what another one holds, as a copy of it has. */
async function browser(name: string, profile?: Backing) {
  const backing = memoryBacking(await profile?.read('all'));
  const store = await openTab({ open: async () => backing, device: () => name });
  return { store, backing };
}

const fileOf = async (store: Store): Promise<Backup> =>
  expectOk(readBackup(writeBackup(await store.snapshot(), MADE)));

const takeIn = async (store: Store, backup: Backup) =>
  expectOk(await store.rewrite((current) => withBackup(current, { ...backup, name: 'there.json' }, 'merge')));

async function rename(store: Store, ...names: readonly string[]): Promise<void> {
  for (const name of names) {
    const stored = await store.get('boxes', 'b');
    expectOk(await store.put('boxes', 'b', box(name, 400), stored?.revision ?? null));
  }
}

describe('a browser profile that was copied', () => {
  it('is known by the writes under its name that it has not made, and neither loses anything', async () => {
    const one = await browser('same');
    await rename(one.store, 'spares');
    await one.store.put('boxes', 'gone', box('gone', 400), null);
    const copy = await browser('same', one.backing);
    await rename(one.store, 'of the first');
    await rename(copy.store, 'of the copy', 'of the copy again');
    await copy.store.remove('boxes', 'gone', 1);
    const [there, here] = [await fileOf(copy.store), await one.store.snapshot()];
    expect(isOfCopy(there, here, 'same')).toBe(true);
    expect(isOfCopy(there, here, 'another')).toBe(false);
    await takeIn(one.store, asOfAnother(there, 'same'));
    const stands = (await one.store.list('boxes')).map(({ value }) => value.name);
    const aside = one.store.health().setAside.map(({ text }) => JSON.parse(text)?.name ?? JSON.parse(text));
    expect([...stands, ...aside].sort()).toEqual(['gone', 'of the copy again', 'of the first']);
    // Once more, nothing happens.
    const done = await takeIn(one.store, asOfAnother(there, 'same'));
    expect(done.after).toEqual(done.before);
  });

  it('is not seen where another device has worked on what this one made, or a file is older', async () => {
    const [phone, laptop] = [await browser('phone'), await browser('laptop')];
    await rename(phone.store, 'spares', 'more spares');
    await takeIn(laptop.store, await fileOf(phone.store));
    await rename(laptop.store, 'of the laptop');
    const older = await fileOf(phone.store);
    await rename(phone.store, 'of the phone');
    for (const file of [await fileOf(laptop.store), older])
      expect(isOfCopy(file, await phone.store.snapshot(), 'phone')).toBe(false);
    // Nor where nothing is here yet: then all of it simply comes in.
    expect(isOfCopy(older, await (await browser('new')).store.snapshot(), 'phone')).toBe(false);
  });

  it('keeps its new name', () => {
    const first = ownDevice();
    expect(ownDevice()).toBe(first);
    renameDevice();
    const second = ownDevice();
    expect(second).not.toBe(first);
    expect(ownDevice()).toBe(second);
    expect(localStorage.getItem('heavy-air.device')).toBe(second);
  });
});
