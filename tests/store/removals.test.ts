import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { readBackup, writeBackup } from '@/lib/store/backup-file';
import { type ImportMode, type NamedBackup, previewImport, withBackup } from '@/lib/store/backup-import';
import { DATABASE_NAME } from '@/lib/store/database-name';
import type { Store } from '@/lib/store/store-type';
import { withTakenBack } from '@/lib/store/taken-back';
import { undoRewrite } from '@/lib/store/undo-rewrite';
import { mergedWords, setAsideWords, stayAwaySentence } from '@/lib/words/merged';
import type { FieldVoice } from '@/lib/words/merged-field';
import { closeTabs, event, freshBrowser, machine, openTab } from './tabs';

afterEach(closeTabs);
beforeEach(freshBrowser);

const MADE = '2027-01-16T20:00:00.000Z';
const VOICE: FieldVoice = {
  units: { temperature: 'C', pressure: 'hPa', elevation: 'm' },
  hours: '24',
  machineName: () => '',
};

/** A device of its own: its database, and its name in traces. */
async function device(name: string): Promise<Store> {
  freshBrowser();
  return openTab({ device: () => name });
}

const fileOf = async (store: Store, name = 'there.json'): Promise<NamedBackup> => ({
  ...expectOk(readBackup(writeBackup(await store.snapshot(), MADE, store.health().setAside))),
  name,
});

const takeIn = async (store: Store, file: NamedBackup, mode: ImportMode = 'merge') =>
  expectOk(await store.rewrite((current) => withBackup(current, file, mode)));

const names = async (store: Store): Promise<readonly string[]> =>
  (await store.list('machines')).map(({ value }) => value.machine.name);

async function rename(store: Store, name: string): Promise<void> {
  const stored = await store.get('machines', 'm');
  if (stored === null) throw new Error('not there');
  const value = { ...stored.value, machine: { ...stored.value.machine, name } };
  expectOk(await store.put('machines', 'm', value, stored.revision));
}

async function remove(store: Store): Promise<void> {
  const stored = await store.get('machines', 'm');
  expectOk(await store.remove('machines', 'm', stored?.revision ?? 0));
}

/** A phone and a laptop that both have the machine, and the phone's file of that time. */
async function both() {
  const phone = await device('phone');
  await phone.put('machines', 'm', machine('Blue'), null);
  const file = await fileOf(phone);
  const laptop = await device('laptop');
  await takeIn(laptop, file);
  return { phone, laptop, file };
}

const words = async (store: Store, file: NamedBackup) => {
  const { changes } = previewImport(file, await store.snapshot());
  return [...mergedWords(changes, VOICE), stayAwaySentence(changes, VOICE)];
};

const asideWords = (store: Store) =>
  store.health().setAside.map((aside) => setAsideWords(aside, null, VOICE));

describe('a record that was removed here', () => {
  it('stays removed when a copy comes that says nothing new, and the preview names it', async () => {
    const { phone, laptop } = await both();
    await remove(phone);
    const file = await fileOf(laptop);
    expect(await words(phone, file)).toEqual(['Removed here, so it stays out: Machine Blue.']);
    await takeIn(phone, file);
    expect(await names(phone)).toEqual([]);
    expect(phone.health().setAside).toEqual([]);
  });

  it('stays removed where it was changed there, which is set aside and can be taken back', async () => {
    const { phone, laptop } = await both();
    await remove(phone);
    await rename(laptop, 'Blue of the laptop');
    const file = await fileOf(laptop);
    expect(await words(phone, file)).toMatchObject([
      { title: 'Machine Blue of the laptop', lines: [expect.stringContaining('stays removed')] },
      null,
    ]);
    await takeIn(phone, file);
    expect(await names(phone)).toEqual([]);
    expect(asideWords(phone)).toMatchObject([
      { title: 'Machine Blue of the laptop', why: expect.stringContaining('changed in there.json') },
    ]);
    const [aside] = phone.health().setAside;
    expectOk(await phone.rewrite((current) => withTakenBack(current, aside!) ?? current));
    expect(await names(phone)).toEqual(['Blue of the laptop']);
    // Whoever took it back knew that it had been removed: it stands on both then.
    await takeIn(laptop, await fileOf(phone));
    await takeIn(phone, await fileOf(laptop));
    expect([await names(phone), await names(laptop)]).toEqual([
      ['Blue of the laptop'],
      ['Blue of the laptop'],
    ]);
  });

  it('is brought back where that is asked for, and then stands on both', async () => {
    const { phone, laptop, file } = await both();
    await remove(phone);
    await takeIn(laptop, await fileOf(phone));
    expect(await names(laptop)).toEqual([]);
    await takeIn(phone, file, 'bring-back');
    await takeIn(laptop, await fileOf(phone));
    expect([await names(phone), await names(laptop)]).toEqual([['Blue'], ['Blue']]);
  });

  it('is brought back by Undo for a device that has heard of its removal, too', async () => {
    const { phone, laptop } = await both();
    const stored = (await phone.get('machines', 'm'))!;
    const removed = expectOk(await phone.remove('machines', 'm', stored.revision));
    await takeIn(laptop, await fileOf(phone));
    expectOk(await phone.restore('machines', removed));
    await takeIn(phone, await fileOf(laptop));
    await takeIn(laptop, await fileOf(phone));
    expect([await names(phone), await names(laptop)]).toEqual([['Blue'], ['Blue']]);
  });

  it.each(['phone', 'laptop'] as const)(
    'stays removed while one of two removals is not known to who put it back (%s)',
    async (who) => {
      const devices = await both();
      const [one, other] =
        who === 'phone' ? [devices.phone, devices.laptop] : [devices.laptop, devices.phone];
      const stored = (await one.get('machines', 'm'))!;
      const removed = expectOk(await one.remove('machines', 'm', stored.revision));
      const between = await fileOf(one);
      await remove(other);
      expectOk(await one.restore('machines', removed));
      await takeIn(other, between);
      await takeIn(other, await fileOf(one));
      expect(await names(other)).toEqual([]);
    },
  );

  it('says nothing of a record that was damaged: its copy comes in', async () => {
    const { laptop } = await both();
    const file = await fileOf(laptop);
    const store = await device('phone');
    await store.put('machines', 'm', machine('Blue'), null);
    const database = await openDB(DATABASE_NAME);
    await database.put('records', { ...(await database.get('records', ['machines', 'm'])), value: 'torn' });
    database.close();
    expect(await names(store)).toEqual([]);
    await takeIn(store, file);
    expect(await names(store)).toEqual(['Blue']);
  });
});

describe('a record that was removed there', () => {
  it('goes here too, by name, and is set aside', async () => {
    const { phone, laptop } = await both();
    await remove(phone);
    const file = await fileOf(phone, 'phone.json');
    expect(await words(laptop, file)).toMatchObject([
      { title: 'Machine Blue', lines: ['It was removed there. It goes, and is set aside.'] },
      null,
    ]);
    const done = await takeIn(laptop, file);
    expect(await names(laptop)).toEqual([]);
    expect(asideWords(laptop)).toMatchObject([
      { title: 'Machine Blue', why: expect.stringContaining('phone.json') },
    ]);
    expectOk(await undoRewrite(laptop, done));
    expect([await names(laptop), laptop.health().setAside]).toEqual([['Blue'], []]);
    // Taken back, the merge is as if it had not been: the same file does the same once more.
    await takeIn(laptop, file);
    expect(await names(laptop)).toEqual([]);
  });

  it('is known of where it never was: an older file does not bring it', async () => {
    const { phone, file } = await both();
    await remove(phone);
    const tablet = await device('tablet');
    const done = await takeIn(tablet, await fileOf(phone));
    expect(await words(tablet, file)).toEqual(['Removed here, so it stays out: Machine Blue.']);
    expectOk(await undoRewrite(tablet, done));
    await takeIn(tablet, file);
    expect(await names(tablet)).toEqual(['Blue']);
  });

  it('stays where it is the invented one, which every device has for itself', async () => {
    const [phone, laptop] = [await device('phone'), await device('laptop')];
    const invented = { ...event('Invented'), demo: true };
    const nights = async (store: Store) => (await store.list('events')).length;
    for (const store of [phone, laptop]) expectOk(await store.put('events', 'e', invented, null));
    expectOk(await phone.remove('events', 'e', 1));
    await takeIn(laptop, await fileOf(phone));
    await takeIn(phone, await fileOf(laptop));
    expect([await nights(phone), await nights(laptop)]).toEqual([0, 1]);
    expect(await words(phone, await fileOf(laptop))).toEqual([null]);
  });

  it('is a removal only where somebody removed it, not where a replacement went back to before it', async () => {
    const { phone, laptop } = await both();
    const empty = await fileOf(await device('empty'));
    await takeIn(phone, empty, 'replace');
    await takeIn(laptop, await fileOf(phone));
    await takeIn(phone, await fileOf(laptop));
    expect([await names(phone), await names(laptop)]).toEqual([['Blue'], ['Blue']]);
  });
});
