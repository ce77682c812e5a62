import { describe, expect, it } from 'vitest';
import { drifts } from '@/lib/carb/drift';
import { laneOf } from '@/lib/carb/lane';
import { ratio } from '@/lib/units/quantity';
import { idealSizes } from '@/tests/support/ideal-sizes';
import { airOf, raceMachine } from '@/tests/support/race-machine';

describe('the lane of a jet', () => {
  it('ends where the drift, counted the other way round, meets the limits', () => {
    // The planner's own arithmetic on the same machine: at the lean edge the drift must be the lean limit.
    const machine = raceMachine();
    const air = airOf(-24, 990, 0.7);
    const [ideal] = idealSizes(machine, air);
    const [drift] = drifts(machine, { mains: [410, 410], trim: null }, air);
    const { leanEdge, richEdge } = laneOf(machine, 410, null);
    expect(drift).toBeLessThan(-machine.limits.lean);
    expect(ideal).toBeGreaterThan(leanEdge);
    // Both count the same ratio of areas: 410 / ideal - 1 and 410 / edge - 1.
    expect(410 / leanEdge - 1).toBeCloseTo(-0.02, 12);
    expect(410 / richEdge - 1).toBeCloseTo(0.05, 12);
    expect(410 / (ideal ?? 0) - 1).toBeCloseTo(drift ?? 0, 12);
  });

  it('is half as wide in sizes where the number is a bore, whose area goes with its square', () => {
    const lane = laneOf(raceMachine({ marking: { kind: 'bore' } }), 200, null);
    expect((200 / lane.leanEdge) ** 2 - 1).toBeCloseTo(-0.02, 12);
    expect((200 / lane.richEdge) ** 2 - 1).toBeCloseTo(0.05, 12);
    expect(lane.worth).toBeCloseTo(200, 12);
  });

  it('moves up with a trim circuit turned richer', () => {
    const machine = raceMachine({
      trim: { lowest: 1, highest: 5, baseline: 3, richerPerPosition: ratio(0.02) },
    });
    expect(laneOf(machine, 410, 3).worth).toBeCloseTo(410, 10);
    expect(laneOf(machine, 410, 4).worth).toBeCloseTo(410 * 1.02, 10);
    expect(laneOf(machine, 410, 4).leanEdge).toBeCloseTo((410 * 1.02) / 0.98, 10);
  });
});
