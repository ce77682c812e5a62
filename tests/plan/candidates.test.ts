import { describe, expect, it } from 'vitest';
import { logDelivered } from '@/lib/carb/drift';
import type { Box, Machine } from '@/lib/carb/machine';
import { candidatesFor, jetSets, unbeatenSets } from '@/lib/plan/candidates';
import { ratio } from '@/lib/units/quantity';
import { machineOf } from '@/tests/support/plan-cases';
import { dice } from '@/tests/support/small-choices';

function triple(box: Box, mains: readonly number[] = [410, 400, 410]): Machine {
  return machineOf({ carburettors: mains.map((main) => ({ main })), box });
}

/** Every way to fill the carburettors from the pieces of the box. */
function everyFilling(box: Box, carburettors: number): readonly (readonly number[])[] {
  if (carburettors === 0) return [[]];
  return box.flatMap(({ size, count }) => {
    if (count === 0) return [];
    const left = box.map((entry) => (entry.size === size ? { size, count: count - 1 } : entry));
    return everyFilling(left, carburettors - 1).map((rest) => [size, ...rest]);
  });
}

describe('The settings a box allows', () => {
  it('of a single carburettor are its jets, leanest first', () => {
    expect(
      jetSets(
        machineOf({
          box: [
            { size: 430, count: 1 },
            { size: 400, count: 2 },
            { size: 420, count: 0 },
          ],
        }),
      ),
    ).toEqual([[400], [430]]);
  });

  it('keep the stagger of a triple where the box does', () => {
    const sets = jetSets(triple([390, 400, 410, 420, 430, 440].map((size) => ({ size, count: 3 }))));
    expect(sets).toContainEqual([410, 400, 410]);
    expect(sets).toContainEqual([420, 410, 420]);
    expect(sets).toContainEqual([430, 420, 430]);
  });

  it('give the stagger up only where the box has no staggered set a size richer', () => {
    const tens = [380, 390, 400, 410, 420].map((size) => ({ size, count: 3 }));
    const uneven = (mains: readonly number[]) => mains[0]! - mains[1]! !== 10;
    // On high ground all three would come down to 400: the middle one goes along.
    expect(jetSets(triple(tens)).filter(uneven)).toEqual([]);
    expect(unbeatenSets(triple(tens)).filter(uneven).length).toBeGreaterThan(1);
    const short = tens.filter(({ size }) => size === 400 || size === 420);
    expect(jetSets(triple(short))).toContainEqual([400, 400, 400]);
    // Jets that are alike stay alike wherever they can.
    const twin = triple(
      [400, 410, 420].map((size) => ({ size, count: 2 })),
      [410, 410],
    );
    expect(jetSets(twin)).toEqual([
      [400, 400],
      [410, 410],
      [420, 420],
    ]);
  });

  it('never take more pieces than are owned', () => {
    const box = [
      { size: 400, count: 1 },
      { size: 410, count: 2 },
      { size: 420, count: 1 },
      { size: 430, count: 2 },
    ];
    for (const mains of jetSets(triple(box)))
      for (const { size, count } of box)
        expect(mains.filter((main) => main === size).length).toBeLessThanOrEqual(count);
    expect(jetSets(triple([{ size: 410, count: 2 }]))).toEqual([]);
  });

  it('have, for every other way to fill the carburettors, one that is leaner nowhere and richer in nothing', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const roll = dice(seed);
      const box = [390, 400, 410, 420, 430].map((size) => ({ size, count: roll.below(3) }));
      const mains = Array.from({ length: 1 + roll.below(3) }, () => 390 + 10 * roll.below(5));
      const machine = triple(box, mains);
      const owned = [...unbeatenSets(machine), mains].map((each) => {
        const delivered = logDelivered(machine, { mains: each, trim: null });
        return { delivered, leanest: Math.min(...delivered), richest: Math.max(...delivered) };
      });
      for (const filling of everyFilling(box, mains.length)) {
        const delivered = logDelivered(machine, { mains: filling, trim: null });
        const [leanest, richest] = [Math.min(...delivered), Math.max(...delivered)];
        // Loss is a convex rising function of each carburettor's fuel: ramps from every start stand for them all.
        const ramp = (logs: readonly number[], start: number) =>
          logs.reduce((sum, log) => sum + Math.max(0, log - start), 0);
        const better = owned.some((candidate) => {
          const starts = [...delivered, ...candidate.delivered];
          return (
            candidate.leanest >= leanest - 1e-9 &&
            candidate.richest <= richest + 1e-9 &&
            starts.every((start) => ramp(candidate.delivered, start) <= ramp(delivered, start) + 1e-9)
          );
        });
        expect(better, `seed ${seed}: ${filling}`).toBe(true);
      }
    }
  });

  it('are no more than the sizes times the carburettors, also for six of them', () => {
    const box = Array.from({ length: 12 }, (_, i) => ({ size: 150 + 2.5 * i, count: 6 }));
    const six = machineOf({
      carburettors: [160, 162.5, 165, 165, 162.5, 160].map((main) => ({ main })),
      box,
      marking: { kind: 'bore' },
    });
    expect(unbeatenSets(six).length).toBeGreaterThan(12);
    expect(unbeatenSets(six).length).toBeLessThanOrEqual(12 * 6);
  });

  it('hold what is fitted though the box does not, and every trim position', () => {
    const machine = machineOf({
      box: [{ size: 410, count: 1 }],
      trim: { lowest: 1, highest: 3, baseline: 2, richerPerPosition: ratio(0.015) },
    });
    const settings = candidatesFor(machine, { mains: [405], trim: 2 });
    expect(settings.map(({ setting }) => [setting.mains[0], setting.trim])).toEqual([
      [410, 1],
      [410, 2],
      [410, 3],
      [405, 1],
      [405, 2],
      [405, 3],
    ]);
    expect(settings.map(({ group }) => group)).toEqual([0, 0, 0, 1, 1, 1]);
    expect(settings[2]!.leanest).toBeCloseTo(Math.log(1.015), 12);
  });
});
