import { Writable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { createLog, logSaid, writingTo } from '@/app/api/_serve/log';
import { logWatch } from '@/app/api/_serve/watch';

function written() {
  const lines: string[] = [];
  const log = createLog(
    (line) => lines.push(line),
    () => '2027-01-17T02:00:00.000Z',
  );
  return { log, lines, last: () => JSON.parse(lines.at(-1) ?? 'null') };
}

describe('the log', () => {
  it('is one JSON object a line, with its time in UTC', () => {
    const { log, lines } = written();
    log('info', 'serving', { port: 3000, words: 'two\nlines' });
    expect(lines).toEqual([
      '{"time":"2027-01-17T02:00:00.000Z","level":"info","event":"serving","port":3000,"words":"two\\nlines"}\n',
    ]);
  });

  it('tells a fault by its kind and its place in the code, and nothing that was in hand', () => {
    const { log, lines, last } = written();
    const fault = new TypeError('no night d=eyJhbGciOi at 46.10,-89.20 for 192.0.2.7');
    fault.stack = `TypeError: ${fault.message}\n    at plan (/srv/heavy-air/.next/serve/thread.mjs:10:5)\n    at async file:///srv/x/y.mjs:3:1`;
    logSaid(log, 'error', [fault]);
    expect(last()).toMatchObject({ level: 'error', event: 'fault', error: 'TypeError' });
    expect(last().at[0]).toBe('plan (thread.mjs:10:5)');
    expect(lines.join()).not.toMatch(/46\.10|89\.20|192\.0|eyJ|srv|no night/);
  });

  it.each([
    'Cannot render page with path "/open?d=eyJhbGciOi"',
    'Failed to fetch https://weather.example/forecast?latitude=46.10&longitude=-89.20',
    "uncaughtException: 'secret' from 192.0.2.7 and [2001:db8::7]:443",
    'Bearer 4f1c9a0d8e7b6a5c4d3e2f1a0b9c8d7e',
  ])('of what the framework says keeps the words: %s', (said) => {
    const { log, lines, last } = written();
    logSaid(log, 'warn', [said]);
    expect(lines.join().replace('2027-01-17T02:00:00.000Z', '')).not.toMatch(
      /eyJ|46\.10|89\.20|secret|192\.0|2001|4f1c|weather\.example/,
    );
    expect(last().words.length).toBeGreaterThan(3);
  });

  it('goes on without its reader, and tries no more to reach it', async () => {
    let tries = 0;
    const gone = new Writable({
      write: (_line, _encoding, done) => {
        tries += 1;
        done(Object.assign(new Error('write EPIPE'), { code: 'EPIPE' }));
      },
      autoDestroy: false,
    });
    const log = createLog(writingTo(gone), () => '');
    log('info', 'one');
    await new Promise((resolve) => setImmediate(resolve));
    for (let i = 0; i < 3; i += 1) log('info', 'more');
    await new Promise((resolve) => setImmediate(resolve));
    expect(tries).toBe(1);
  });

  it('counts what weather services fail at, and tells requests only where they went wrong', () => {
    const { log, lines, last } = written();
    const watch = logWatch(log, { all: false });
    watch.upstreamFailed('metNorway', 'timeout');
    watch.upstreamFailed('openMeteo', 'timeout');
    watch.upstreamFailed('metNorway', 'timeout');
    expect(last()).toMatchObject({
      event: 'weather-service-failed',
      host: 'metNorway',
      code: 'timeout',
      times: 2,
    });
    const before = lines.length;
    const request = { route: '/api/plan', method: 'POST', seconds: 0.0123 };
    watch.served({ ...request, status: 200 });
    expect(lines.length).toBe(before);
    watch.served({ ...request, status: 500 });
    expect(last()).toMatchObject({
      level: 'error',
      event: 'request',
      route: '/api/plan',
      status: 500,
      ms: 12,
    });
    logWatch(log, { all: true }).served({ ...request, status: 200 });
    expect(last()).toMatchObject({ level: 'info', status: 200 });
  });
});
