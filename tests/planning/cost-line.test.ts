import { describe, expect, it } from 'vitest';
import { createCostLine } from '@/app/api/_planning/cost-line';
import { withMadeMaps } from '@/tests/support/made-maps';

const drain = <T>(line: { next: () => T | undefined }): readonly T[] => {
  const out: T[] = [];
  for (let one = line.next(); one !== undefined; one = line.next()) out.push(one);
  return out;
};

describe('a line by cost', () => {
  it('gives callers like shares of the work: ten small ones pass while one large one waits its turn', () => {
    const line = createCostLine<string>({ ofOne: 1000, ofAll: 10_000 });
    for (let i = 0; i < 3; i += 1) line.join('large', `L${i}`, 100);
    for (let i = 0; i < 12; i += 1) line.join('small', `s${i}`, 10);
    const order = drain(line);
    // Whatever has been served when, no caller is ahead by more than one job of the other.
    let [large, small] = [0, 0];
    for (const one of order.slice(0, -1)) {
      if (one.startsWith('L')) large += 100;
      else small += 10;
      if (small < 120 && large < 300) expect(Math.abs(large - small)).toBeLessThanOrEqual(100);
    }
    expect(order.filter((one) => one.startsWith('s'))).toEqual(Array.from({ length: 12 }, (_, i) => `s${i}`));
  });

  it('lets a newcomer in at once: a caller who came long before has no claim to what others did not use', () => {
    const line = createCostLine<string>({ ofOne: 1000, ofAll: 10_000 });
    for (let i = 0; i < 9; i += 1) line.join('first', `f${i}`, 50);
    for (let i = 0; i < 5; i += 1) line.next();
    line.join('late', 'l', 50);
    expect([line.next(), line.next()]).toContain('l');
    line.join('idle', 'i0', 50);
    drain(line);
    line.join('first', 'again', 50);
    line.join('idle', 'i1', 50);
    expect(drain(line).length).toBe(2);
  });

  it('turns away who has too much waiting, and nobody else', () => {
    const line = createCostLine<string>({ ofOne: 100, ofAll: 1000 });
    expect(line.join('flood', 'a', 60)).toEqual([]);
    expect(line.join('flood', 'b', 60)).toEqual(['b']);
    expect(line.join('other', 'c', 60)).toEqual([]);
    // One that alone is more than anybody may have is taken where nothing of theirs waits.
    expect(line.join('third', 'd', 150)).toEqual([]);
  });

  it('full, sends away the newest of who has most in it: a flood gives another no refusal', () => {
    const line = createCostLine<string>({ ofOne: 500, ofAll: 500 });
    for (let i = 0; i < 5; i += 1) expect(line.join('flood', `f${i}`, 100)).toEqual([]);
    expect(line.join('rider', 'r', 20)).toEqual(['f4']);
    expect(line.cost()).toBe(420);
    expect(drain(line)).toContain('r');
  });

  it('forgets who leaves it', () => {
    const line = createCostLine<string>({ ofOne: 500, ofAll: 500 });
    line.join('a', 'one', 10);
    line.join('a', 'two', 10);
    line.leave('one');
    expect([line.length(), line.cost()]).toEqual([1, 10]);
    expect(drain(line)).toEqual(['two']);
    expect([line.length(), line.cost(), line.next()]).toEqual([0, 0, undefined]);
  });

  it('remembers nobody once nobody waits, and only some while it is never empty', () => {
    const { made: line, maps } = withMadeMaps(() => createCostLine<string>({ ofOne: 500, ofAll: 1e9 }));
    const [remembered] = maps;
    for (let i = 0; i < 50; i += 1) {
      line.join(`once-${i}`, `o${i}`, 100);
      expect(drain(line)).toEqual([`o${i}`]);
      expect(remembered?.size).toBe(0);
    }
    line.join('waits', 'w', 100);
    for (let i = 0; i < 5000; i += 1) {
      line.join(`one-${i}`, `o${i}`, 100);
      line.join(`two-${i}`, `t${i}`, 100);
      line.next();
      line.next();
    }
    expect(remembered?.size).toBeLessThan(1010);
    expect(line.length()).toBe(1);
  });

  it('lets whoever had much wait for those who had less until the line is empty', () => {
    const line = createCostLine<string>({ ofOne: 1000, ofAll: 10_000 });
    line.join('much', 'm0', 500);
    line.join('little', 'l0', 10);
    expect([line.next(), line.next()]).toEqual(['m0', 'l0']);
    // Nobody has found it empty yet.
    line.join('much', 'm1', 10);
    line.join('little', 'l1', 10);
    expect(drain(line)).toEqual(['l1', 'm1']);
    line.join('much', 'm2', 10);
    line.join('little', 'l2', 10);
    expect(drain(line)).toEqual(['m2', 'l2']);
  });
});
