import { describe, expect, it } from 'vitest';
import type { Pilot } from '@/lib/carb/machine';
import { pilotFor, pilotSizesBetween } from '@/lib/carb/pilot';
import { ratio } from '@/lib/units/quantity';

/** Steps of 2.5 near 45 are 5.6 %: one size of 6 % each. */
const PILOT: Pilot = {
  jet: 45,
  jets: [42.5, 45, 47.5, 50],
  screw: 'fuel',
  turns: 1,
  leastTurns: 0.5,
  mostTurns: 2.25,
  turnsPerSize: 1.25,
  richerPerSize: ratio(0.06),
};
const AIR_SCREW: Pilot = { ...PILOT, screw: 'air', turns: 1.5 };
const size = Math.log(1.06);

describe('the screw', () => {
  it("stays where it is in the baseline's air", () => {
    expect(pilotFor(PILOT, 0)).toEqual({ jet: 45, turns: 1, turnsWanted: 1, act: 'turn', logLeft: 0 });
  });

  it('a fuel screw goes out for cold air, an air screw goes in, by the same turns', () => {
    expect(pilotFor(PILOT, size / 2).turns).toBeCloseTo(1 + 0.625, 12);
    expect(pilotFor(AIR_SCREW, size / 2).turns).toBeCloseTo(1.5 - 0.625, 12);
  });

  it('and the other way round for warm air', () => {
    expect(pilotFor(PILOT, -size / 4).turns).toBeCloseTo(1 - 0.3125, 12);
    expect(pilotFor(AIR_SCREW, -size / 4).turns).toBeCloseTo(1.5 + 0.3125, 12);
  });
});

describe('where the range ends', () => {
  it('the next richer pilot takes over and the screw comes back by one size of turns', () => {
    const advice = pilotFor(PILOT, 1.2 * size);
    expect(advice.act).toBe('change-jet');
    expect(advice.jet).toBe(47.5);
    expect(advice.turns).toBeCloseTo(1 + 0.2 * 1.25, 12);
    expect(advice.turnsWanted).toBeCloseTo(2.5, 12);
    expect(advice.logLeft).toBeCloseTo(0, 12);
  });

  it('an air screw that would close also asks for the richer pilot', () => {
    const advice = pilotFor(AIR_SCREW, 1.2 * size);
    expect(advice).toMatchObject({ act: 'change-jet', jet: 47.5 });
    expect(advice.turns).toBeCloseTo(1.5 - 0.25, 12);
  });

  it('warm air asks for the leaner pilot', () => {
    expect(pilotFor(PILOT, -0.8 * size)).toMatchObject({ act: 'change-jet', jet: 42.5 });
  });

  it('the nearest jet that reaches is chosen, not the farthest', () => {
    expect(pilotFor({ ...PILOT, jets: [50, 47.5, 42.5] }, 1.1 * size).jet).toBe(47.5);
  });

  it('a jet missing from the drawer is stepped over, and counted as the two sizes it is', () => {
    const advice = pilotFor({ ...PILOT, jets: [50] }, 1.7 * size);
    expect(advice).toMatchObject({ act: 'change-jet', jet: 50 });
    expect(advice.turns).toBeCloseTo(1 - 0.3 * 1.25, 12);
  });

  it('when no owned pilot reaches, says so, with the nearest and what stays lean', () => {
    const advice = pilotFor({ ...PILOT, jets: [42.5] }, 1.4 * size);
    expect(advice).toMatchObject({ act: 'none-left', jet: 45, turns: 2.25 });
    // Wanted 1 + 1.75 turns, 2.25 given: half a turn is 0.4 of a size lean.
    expect(advice.logLeft).toBeCloseTo(-0.4 * size, 12);
  });

  it('when no owned pilot is lean enough, what is left over is rich', () => {
    expect(pilotFor({ ...PILOT, jets: [] }, -size).logLeft).toBeCloseTo(0.6 * size, 12);
  });

  it('an air screw at its end leaves the same lean rest as a fuel screw', () => {
    const advice = pilotFor({ ...AIR_SCREW, jets: [] }, 1.2 * size);
    expect(advice).toMatchObject({ act: 'none-left', turns: 0.5 });
    expect(advice.logLeft).toBeCloseTo(-0.4 * size, 12);
  });
});

describe('pilot sizes apart', () => {
  it.each([
    [45, 45, 0],
    [45, 47.5, 1],
    [45, 50, 2],
    [47.5, 45, -1],
    [45, 46, 1],
    [45, 44, -1],
  ])('from %d to %d is %d', (from, to, sizes) => {
    expect(pilotSizesBetween(PILOT, from, to)).toBe(sizes);
  });
});
