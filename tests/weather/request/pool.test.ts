import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { fail, ok, type Result } from '@/lib/result/result';
import { createFairLine } from '@/lib/weather/request/fair-line';
import { createPool, type Turn } from '@/lib/weather/request/pool';

const turn = (more: Partial<Turn> = {}): Turn => ({
  caller: 'a',
  deadline: new AbortController().signal,
  width: 1,
  longestMs: 1000,
  extra: false,
  ...more,
});
const never = (): Promise<Result<number, never>> => new Promise(() => undefined);
const soon =
  (name: string, log: string[] = []) =>
  async (): Promise<Result<string, never>> => {
    log.push(`${name} starts`);
    await new Promise((resolve) => setTimeout(resolve, 1));
    log.push(`${name} ends`);
    return ok(name);
  };

describe('a pool', () => {
  afterEach(() => vi.useRealTimers());

  it('of one lets one job run at a time, in order', async () => {
    const pool = createPool(10);
    const log: string[] = [];
    await Promise.all(['a', 'b', 'c'].map((name) => pool.run(turn(), soon(name, log))));
    expect(log).toEqual(['a starts', 'a ends', 'b starts', 'b ends', 'c starts', 'c ends']);
  });

  it('of three lets three run at a time', async () => {
    const pool = createPool(10);
    const log: string[] = [];
    await Promise.all(['a', 'b', 'c', 'd'].map((name) => pool.run(turn({ width: 3 }), soon(name, log))));
    expect(log.slice(0, 4)).toEqual(['a starts', 'b starts', 'c starts', 'a ends']);
  });

  it('lets an extra wait until nobody else does', async () => {
    const pool = createPool(10);
    const log: string[] = [];
    const extra = turn({ extra: true });
    const jobs = [pool.run(turn(), soon('a', log)), pool.run(extra, soon('extra', log))];
    jobs.push(pool.run(turn(), soon('b', log)), pool.run(turn({ caller: 'b' }), soon('c', log)));
    await Promise.all(jobs);
    const starts = log.filter((line) => line.endsWith('starts')).map((line) => line.split(' ')[0]);
    expect(starts).toEqual(['a', 'b', 'c', 'extra']);
  });

  it('turns away the one too many, and goes on after a job that broke', async () => {
    const pool = createPool(1);
    const broken = pool.run(turn(), () => Promise.reject(new Error('broke')));
    const second = pool.run(turn(), async () => ok(1));
    expect(await pool.run(turn(), async () => ok(2))).toEqual(fail({ code: 'busy' }));
    await expect(broken).rejects.toThrow('broke');
    expect(await second).toEqual(ok(1));
    expect(await pool.run(turn(), async () => ok(3))).toEqual(ok(3));
  });

  it('goes on after a job that throws at once', async () => {
    const pool = createPool(1);
    const broken = pool.run(turn(), () => {
      throw new Error('at once');
    });
    await expect(broken).rejects.toThrow('at once');
    expect(await pool.run(turn(), async () => ok(2))).toEqual(ok(2));
  });

  it('frees the place of a job that never settles', async () => {
    vi.useFakeTimers();
    const pool = createPool(10);
    const wedged = pool.run(turn({ longestMs: 8000 }), never);
    const next = pool.run(turn(), async () => ok('next'));
    await vi.advanceTimersByTimeAsync(8000);
    expect(await wedged).toEqual(fail({ code: 'timeout' }));
    expect(await next).toEqual(ok('next'));
  });

  it('lets go of who has waited long enough, and keeps the others in line', async () => {
    const pool = createPool(10);
    const patience = new AbortController();
    const first = pool.run(turn(), soon('first'));
    const impatient = pool.run(turn({ deadline: patience.signal }), soon('impatient'));
    const patient = pool.run(turn(), soon('patient'));
    patience.abort();
    expect(await impatient).toEqual(fail({ code: 'busy' }));
    expect([await first, await patient]).toEqual([ok('first'), ok('patient')]);
  });

  it('gives every caller a turn: one question is not behind a flood', async () => {
    const pool = createPool(1000);
    const log: string[] = [];
    const flood = Array.from({ length: 100 }, (_, i) =>
      pool.run(turn({ caller: 'flood' }), soon(`${i}`, log)),
    );
    await pool.run(turn({ caller: 'one' }), soon('one', log));
    expect(log.filter((line) => line.endsWith('ends')).length).toBeLessThanOrEqual(3);
    await Promise.all(flood);
  });

  it('that is full of one caller has room for another', async () => {
    const pool = createPool(5);
    const flood = Array.from({ length: 20 }, () => pool.run(turn({ caller: 'flood' }), soon('flood')));
    expect(await pool.run(turn({ caller: 'one' }), soon('one'))).toEqual(ok('one'));
    const told = await Promise.all(flood);
    // One ran, five waited, one of these made room.
    expect(told.filter((answer) => answer.ok)).toHaveLength(5);
  });
});

describe('a fair line', () => {
  it('never holds more than it may, loses nobody, and serves each caller in order', () => {
    const step = fc.oneof(
      fc.record({ join: fc.constantFrom('a', 'b', 'c') }),
      fc.constant('next' as const),
      fc.record({ leave: fc.nat(30) }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 60 }), fc.integer({ min: 1, max: 6 }), (steps, most) => {
        const line = createFairLine<{ caller: string; nr: number }>(most);
        const inside = new Set<{ caller: string; nr: number }>();
        for (const [nr, doing] of steps.entries()) {
          if (doing === 'next') {
            const next = line.next();
            const own = [...inside].filter(({ caller }) => caller === next?.caller);
            expect(next).toBe(own[0]);
            if (next !== undefined) inside.delete(next);
            else expect(inside.size).toBe(0);
          } else if ('join' in doing) {
            const one = { caller: doing.join, nr };
            inside.add(one);
            const gone = line.join(doing.join, one);
            if (gone !== null) expect(inside.delete(gone)).toBe(true);
          } else {
            const one = [...inside][doing.leave];
            if (one !== undefined) line.leave(one);
            if (one !== undefined) inside.delete(one);
          }
          expect(line.length()).toBe(inside.size);
          expect(inside.size).toBeLessThanOrEqual(most);
        }
      }),
    );
  });
});
