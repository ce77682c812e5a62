import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BackupProblem, readBackup, sealBackup, writeBackup } from '@/lib/store/backup-file';
import { importBackup } from '@/lib/store/backup-import';
import type { Store } from '@/lib/store/store-type';
import { seededRandom } from '@/tests/support/seeded-random';
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

/** What people, programs and attackers put into files. */
const POISON: readonly unknown[] = [
  null,
  true,
  0,
  -0,
  -1,
  1e308,
  0.1,
  '',
  'x'.repeat(3000),
  '\u0000',
  '\ud800',
  '__proto__',
  'constructor',
  [],
  [[[]]],
  {},
  { __proto__: null, polluted: true },
  JSON.parse('{"__proto__":{"polluted":true}}'),
  JSON.parse('{"constructor":{"prototype":{"polluted":true}}}'),
  '1e999',
  '2027-02-30T00:00:00Z',
];

const { uniform } = seededRandom(5_000);
const pick = <T>(from: readonly T[]): T => from[Math.floor(uniform() * from.length)] as T;

/** Every place in a JSON value that can be replaced. */
function placesIn(
  value: unknown,
  places: [Record<string, unknown>, string][] = [],
): [Record<string, unknown>, string][] {
  if (typeof value === 'object' && value !== null)
    for (const key of Object.keys(value)) {
      const holder = value as Record<string, unknown>;
      places.push([holder, key]);
      placesIn(holder[key], places);
    }
  return places;
}

type Change = (text: string) => string;

const reseal = (text: string): string =>
  sealBackup(text.replace(/"checksum": "[0-9a-f]{8}"\n\}\n$/, '"checksum": "00000000"\n}\n'));

const onText: readonly Change[] = [
  (text) => text.slice(0, Math.floor(uniform() * text.length)),
  (text) => text.slice(Math.floor(uniform() * text.length)),
  (text) => {
    const at = Math.floor(uniform() * text.length);
    return text.slice(0, at) + String.fromCharCode(Math.floor(uniform() * 0x1_0000)) + text.slice(at + 1);
  },
  (text) => {
    const at = Math.floor(uniform() * text.length);
    return (
      text.slice(0, at) +
      pick(['"__proto__":{"polluted":true},', '[', '{', '"', '\\u0000', ',', '1e400']) +
      text.slice(at)
    );
  },
  (text) => text + text,
  () => pick(['[', '{"a":']).repeat(Math.floor(uniform() * 50_000)),
  () => String.fromCharCode(...Array.from({ length: 200 }, () => Math.floor(uniform() * 0x1_0000))),
];

/** Changes the value and seals it, so that not the checksum but what comes after has to hold. */
const onValue: Change = (text) => {
  const file: Record<string, unknown> = JSON.parse(text);
  for (let changes = 1 + Math.floor(uniform() * 3); changes > 0; changes--) {
    const [holder, key] = pick(placesIn(file).filter(([, name]) => name !== 'checksum'));
    const how = uniform();
    if (how < 0.6) holder[key] = structuredClone(pick(POISON));
    else if (how < 0.8) delete holder[key];
    else
      Object.defineProperty(holder, pick(['__proto__', 'constructor', 'toString', 'extra']), {
        value: structuredClone(pick(POISON)),
        enumerable: true,
        configurable: true,
        writable: true,
      });
  }
  delete file.checksum;
  return sealBackup(`${JSON.stringify({ ...file, checksum: '00000000' }, null, 1)}\n`);
};

const fuzzed = (text: string): string => {
  const how = uniform();
  if (how < 0.5) return onValue(text);
  const changed = pick(onText)(text);
  return how < 0.6 ? reseal(changed) : changed;
};

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
      const result = readBackup(fuzzed(text));
      const code = result.ok ? 'read' : result.reason.code;
      seen.set(code, (seen.get(code) ?? 0) + 1);
      if (!result.ok) expect(CODES).toContain(result.reason.code);
      // A change may have been harmless, such as another note: then the store must take it as it is, and give it back.
      else if (seen.get('read')! % 10 === 1) {
        const done = await importBackup(store, result.value, 'replace');
        expect(done.ok).toBe(true);
        if (done.ok) expect(readBackup(writeBackup(done.value.after, result.value.madeAt))).toEqual(result);
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
  }, 60_000);
});
