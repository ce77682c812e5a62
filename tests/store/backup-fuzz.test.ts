import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BackupProblem, readBackup, writeBackup } from '@/lib/store/backup-file';
import { withBackup } from '@/lib/store/backup-import';
import type { Store } from '@/lib/store/store-type';
import { spoiled } from './spoil';
import { closeTabs, freshBrowser, openTab } from './tabs';
import { trailer } from './trailer';

const FILES = 5_000;
const CODES: readonly BackupProblem['code'][] = [
  'too-large',
  'not-json',
  'foreign',
  'newer-format',
  'damaged',
  'bad-record',
];

let store: Store;
let text = '';

beforeAll(async () => {
  freshBrowser();
  store = await openTab();
  await store.rewrite(trailer);
  text = writeBackup(await store.snapshot(), '2027-01-16T20:00:00.000Z');
});
afterAll(closeTabs);

describe(`${FILES} spoiled backup files`, () => {
  it('are refused with a reason or hold only good records; what is stored stays as it is; nothing leaks into objects', async () => {
    const before = JSON.stringify(await store.snapshot());
    const seen = new Map<string, number>();
    for (let i = 0; i < FILES; i++) {
      const result = readBackup(spoiled(text));
      const code = result.ok ? 'read' : result.reason.code;
      seen.set(code, (seen.get(code) ?? 0) + 1);
      if (!result.ok) expect(CODES).toContain(result.reason.code);
      // A change may have been harmless, such as another note: then the store must take it as it is, and give it back.
      else if (seen.get('read')! % 10 === 1) {
        const done = await store.rewrite((current) =>
          withBackup(current, { ...result.value, name: 'phone.json' }, 'replace'),
        );
        expect(done.ok).toBe(true);
        if (done.ok)
          expect(
            readBackup(writeBackup(done.value.after, result.value.madeAt, result.value.setAside)),
          ).toEqual(result);
        await store.rewrite(() => JSON.parse(before));
      }
      expect(({} as Record<string, unknown>).polluted).toBeUndefined();
      expect(([] as unknown as Record<string, unknown>).polluted).toBeUndefined();
    }
    const { polluted } = Object.prototype as Record<string, unknown>;
    expect(polluted).toBeUndefined();
    expect(Object.keys(Object.prototype)).toEqual([]);
    const withoutRevisions = (snapshot: string): string => snapshot.replace(/"revision":\d+/g, '');
    expect(withoutRevisions(JSON.stringify(await store.snapshot()))).toBe(withoutRevisions(before));
    // The spoiling reached every check.
    for (const code of ['not-json', 'foreign', 'damaged', 'bad-record', 'read'])
      expect(seen.get(code) ?? 0, code).toBeGreaterThan(20);
  }, 120_000);
});
