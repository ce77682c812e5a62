import { describe, expect, it } from 'vitest';
import { bigPilotCost } from '@/lib/trail/pilot-cost';
import { AIR_SCREW_PILOT, SPRING_PILOT } from '../support/trail-machine';

describe('a pilot that is too big', () => {
  it('burns its whole size more where the screw is left alone, and costs k r² of the power', () => {
    const cost = bigPilotCost(SPRING_PILOT, 0, 2);
    expect(cost.jet).toBe(47.5);
    expect(cost.screwLeft.richer).toBeCloseTo(0.06, 12);
    expect(cost.screwLeft.powerLost).toBeCloseTo(2 * 0.06 ** 2, 12);
  });

  it('cannot be taken back by a screw with half a turn left of the turn and a quarter it takes', () => {
    // From 1 turn in to 1/2 takes back (0.5/1.25) of a size, so 0.6 of it stays.
    const { screwSet } = bigPilotCost(SPRING_PILOT, 0, 2);
    expect(screwSet.turns).toBe(0.5);
    expect(screwSet.richer).toBeCloseTo(1.06 ** 0.6 - 1, 9);
  });

  it('costs nothing once the screw has run in far enough, as it does with the screw out at 2 turns', () => {
    const { screwSet } = bigPilotCost({ ...SPRING_PILOT, turns: 2 }, 0, 2);
    expect(screwSet).toMatchObject({ turns: 0.75, richer: 0, powerLost: 0 });
  });

  it('is taken back by an air screw turned out', () => {
    const { screwSet } = bigPilotCost({ ...AIR_SCREW_PILOT, turns: 0.75 }, 0, 2);
    expect(screwSet.turns).toBe(2);
    expect(screwSet.richer).toBe(0);
  });

  it('names no jet where none larger is owned', () => {
    expect(bigPilotCost({ ...SPRING_PILOT, jets: [42.5] }, 0, 2).jet).toBeNull();
  });
});
