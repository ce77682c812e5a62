import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { previewLog, withLogEntries } from '@/lib/share/import-log';
import { writeLogCsv } from '@/lib/share/log-csv';
import { readLogCsv } from '@/lib/share/read-log-csv';
import { type LogRecord, logRecordSchema } from '@/lib/store/records';
import type { Store } from '@/lib/store/store-type';
import { undoRewrite } from '@/lib/store/undo-rewrite';
import { METRIC_UNITS } from '@/lib/units/choice';
import { csvProblemSentence } from '@/lib/words/log-csv-problems';
import { closeTabs, freshBrowser, machine, openTab } from '../store/tabs';

const MACHINES = [{ id: 'm1', name: 'Red twin' }];

function run(minute: number, change: Partial<LogRecord> = {}): LogRecord {
  return logRecordSchema.parse({
    machineId: 'm1',
    run: `Round ${minute}`,
    at: `2027-01-16T20:${String(minute).padStart(2, '0')}:00-06:00`,
    air: { temperatureC: -10, elevationM: 402 },
    setting: { mains: [410], trim: null },
    verdict: 'right',
    sizes: 0,
    note: 'a "quoted", noted run',
    ...change,
  });
}

let store: Store;
beforeEach(async () => {
  freshBrowser();
  store = await openTab();
  await store.put('machines', 'm1', machine('Red twin'), null);
  await store.put('log', 'r1', run(1), null);
});
afterEach(closeTabs);

const newIds = () => {
  let next = 0;
  return () => {
    next += 1;
    return `new-${next}`;
  };
};

describe('taking a table of runs in', () => {
  const file = (...values: LogRecord[]) =>
    writeLogCsv(values.map((value, i) => ({ id: `r${i + 1}`, machine: 'Red twin', value })));

  it('adds what is new, keeps what is here, and can be undone', async () => {
    const text = file(run(1, { note: 'other words' }), run(2), run(3));
    const { entries } = expectOk(readLogCsv(text, MACHINES));
    expect(previewLog(entries, await store.list('log'))).toMatchObject({ same: 0, different: 1 });
    const done = expectOk(await store.rewrite((current) => withLogEntries(current, entries, newIds())));
    const after = await store.list('log');
    expect(after.map(({ value }) => value.run)).toEqual(['Round 1', 'Round 2', 'Round 3']);
    expect(after[0]?.value.note).toBe('a "quoted", noted run');
    expectOk(await undoRewrite(store, done));
    expect((await store.list('log')).map(({ id }) => id)).toEqual(['r1']);
  });

  it('taken in twice, doubles nothing', async () => {
    const text = file(run(1), run(2)).replaceAll(/,r\d,/g, ',,');
    const { entries } = expectOk(readLogCsv(text, MACHINES));
    for (let time = 0; time < 2; time += 1)
      expectOk(await store.rewrite((current) => withLogEntries(current, entries, newIds())));
    expect(await store.list('log')).toHaveLength(2);
  });
});

/** What a hostile or broken file may hold. */
const SHARDS = [
  '__proto__',
  'constructor',
  'prototype',
  '"',
  '""',
  ',',
  ';',
  '\t',
  '\r\n',
  '\0',
  '=1+1',
  'NaN',
];

describe('5,000 spoiled files', () => {
  it('are refused with a reason that has a sentence, or are whole; nothing stored and no prototype changes', async () => {
    const whole = writeLogCsv(
      Array.from({ length: 6 }, (_, i) => ({ id: `r${i}`, machine: 'Red twin', value: run(i) })),
    );
    const before = JSON.stringify(await store.snapshot());
    const prototype = Object.getOwnPropertyNames(Object.prototype).join();
    let refused = 0;
    const spoiled = fc.oneof(
      fc
        .tuple(fc.nat(whole.length), fc.nat(30), fc.oneof(fc.string(), fc.constantFrom(...SHARDS)))
        .map(([at, cut, put]) => whole.slice(0, at) + put + whole.slice(at + cut)),
      fc
        .array(fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom(...SHARDS)), { maxLength: 40 })
        .map((parts) => parts.join('')),
      fc
        .array(fc.constantFrom('time', 'machine', 'mains', 'temperature_c', ...SHARDS), { maxLength: 12 })
        .map((names) => `${names.join(',')}\n${names.join(',')}`),
      fc.nat(whole.length).map((at) => whole.slice(0, at)),
    );
    fc.assert(
      fc.property(spoiled, (text) => {
        const read = readLogCsv(text, MACHINES);
        if (read.ok) {
          for (const { value } of read.value.entries)
            expect(logRecordSchema.safeParse(value).success).toBe(true);
          return;
        }
        refused += 1;
        expect(read.reason.length).toBeGreaterThan(0);
        for (const problem of read.reason)
          expect(csvProblemSentence(problem, METRIC_UNITS).length).toBeGreaterThan(10);
      }),
      { numRuns: 5000, seed: 4 },
    );
    expect(refused).toBeGreaterThan(2000);
    expect(JSON.stringify(await store.snapshot())).toBe(before);
    expect(Object.getOwnPropertyNames(Object.prototype).join()).toBe(prototype);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});
