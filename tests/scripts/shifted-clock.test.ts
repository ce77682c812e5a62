import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { withShiftedClock } from '@/.scripts/shifted-clock.mjs';

/** A hundred years, so that no delay of the machine can be taken for it [ms]. */
const CENTURY_MS = 3_155_760_000_000;

/** What a program says under a clock that is moved. */
function said(script: string, shiftMs = CENTURY_MS): unknown {
  const env = { ...process.env, NODE_OPTIONS: withShiftedClock(), CLOCK_SHIFT_MS: String(shiftMs) };
  return JSON.parse(execFileSync(process.execPath, ['-e', script], { env, encoding: 'utf8' }));
}

describe('a process under a moved clock', () => {
  it('has it wherever the time is asked for, and in its threads and programs too', () => {
    const years = said(`
      const { Worker } = require('node:worker_threads');
      const { execFileSync } = require('node:child_process');
      const year = 'new Date().getFullYear()';
      const thread = new Worker('require("node:worker_threads").parentPort.postMessage(' + year + ')', { eval: true });
      thread.once('message', (inThread) => console.log(JSON.stringify([
        new Date(Date.now()).getFullYear(),
        eval(year),
        Number(Date().split(' ')[3]),
        new (class extends Date {})().getFullYear(),
        Number(execFileSync(process.execPath, ['-p', year], { encoding: 'utf8' })),
        inThread,
      ])));
    `);
    const unshifted = said('console.log(new Date().getFullYear())', 0);
    expect(years).toEqual(Array(6).fill(Number(unshifted) + 100));
  });

  it('leaves a time that is told as it is, and a date a date', () => {
    expect(
      said(`
        const told = new Date('2027-01-17T00:15:00Z');
        console.log(JSON.stringify([
          told.toISOString(), Date.UTC(2027, 0, 17), Date.parse('2027-01-17T00:00:00Z'),
          told instanceof Date, new Date().constructor === Date, Object.prototype.toString.call(new Date()),
        ]));
      `),
    ).toEqual([
      '2027-01-17T00:15:00.000Z',
      1_800_144_000_000,
      1_800_144_000_000,
      true,
      true,
      '[object Date]',
    ]);
  });

  it('runs on', () => {
    expect(
      said('const a = Date.now(); setTimeout(() => console.log(JSON.stringify(Date.now() > a)), 20)'),
    ).toBe(true);
  });
});
