import { describe, expect, it } from 'vitest';
import { pilotFor } from '@/lib/carb/pilot';
import { dialAt, screwDial } from '@/lib/trail/dial';
import { circuitNeed } from '@/lib/trail/season';
import { fahrenheitToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { ratio } from '@/lib/units/quantity';
import { airOfFahrenheit } from '../support/race-machine';
import { AIR_SCREW_PILOT, SPRING_PILOT, trailMachine } from '../support/trail-machine';

const machine = trailMachine();
const SEA_LEVEL = {
  pressure: hectopascalToPascal(1013.25),
  pressureFrom: 'station',
  relativeHumidity: ratio(0),
} as const;
const SPAN = { coldest: fahrenheitToKelvin(-50), warmest: fahrenheitToKelvin(60) };
const dial = screwDial(machine, SEA_LEVEL, SPAN);

describe('the screw over temperature', () => {
  it('has the baseline on its line', () => {
    const read = dialAt(dial, machine.baselineAir.temperature)!;
    expect(read).toMatchObject({ jet: 45, reach: 'within' });
    expect(read.point.turns).toBeCloseTo(dial.baseline.turns, 3);
  });

  it('hands over to the next pilot exactly where the screw’s range ends', () => {
    // Common practice, no source: from one turn to 2 1/4 is one pilot size, so the larger one starts where this did.
    const takeover = dial.takeovers.find(({ warmer }) => warmer.jet === 45)!;
    expect(takeover.colder.jet).toBe(47.5);
    const [larger, smaller] = [takeover.at - 0.02, takeover.at + 0.02].map(
      (t) => dialAt(dial, t as typeof takeover.at)!.point.turns,
    );
    expect(smaller).toBeCloseTo(SPRING_PILOT.mostTurns, 2);
    expect(larger).toBeCloseTo(SPRING_PILOT.mostTurns - SPRING_PILOT.turnsPerSize, 2);
  });

  it('says at every temperature what the pilot advice says there', () => {
    for (const degrees of [-45, -30, -12, 0, 15, 30, 44, 55]) {
      const air = airOfFahrenheit(degrees);
      const advice = pilotFor(machine.pilot, circuitNeed(machine, air));
      const read = dialAt(dial, air.temperature)!;
      expect(read.jet).toBe(advice.jet);
      // Straight lines half a kelvin long against a curve.
      expect(read.point.turns).toBeCloseTo(advice.turns, 3);
    }
  });

  it('falls from cold to warm on every pilot, and never leaves the allowed range', () => {
    for (const { points } of dial.stretches)
      for (const [i, { turns }] of points.entries()) {
        expect(turns).toBeLessThanOrEqual(SPRING_PILOT.mostTurns + 1e-9);
        expect(turns).toBeGreaterThanOrEqual(SPRING_PILOT.leastTurns - 1e-9);
        if (i > 0) expect(turns).toBeLessThanOrEqual(points[i - 1]!.turns + 1e-9);
      }
  });

  it('covers its span without a hole', () => {
    const ends = dial.stretches.map(({ points }) => [points[0]!.temperature, points.at(-1)!.temperature]);
    expect(ends[0]![0]).toBeCloseTo(SPAN.coldest, 9);
    expect(ends.at(-1)![1]).toBeCloseTo(SPAN.warmest, 9);
    for (const [i, [from]] of ends.entries())
      if (i > 0) expect(from! - ends[i - 1]![1]!).toBeLessThanOrEqual(0.01);
  });

  it('rises from cold to warm behind an air screw', () => {
    const air = screwDial(trailMachine({ pilot: AIR_SCREW_PILOT }), SEA_LEVEL, SPAN);
    for (const { points } of air.stretches)
      for (const [i, { turns }] of points.entries())
        if (i > 0) expect(turns).toBeGreaterThanOrEqual(points[i - 1]!.turns - 1e-9);
  });

  it('holds the screw at its end where no owned pilot reaches further, and says so', () => {
    const one = screwDial(trailMachine({ pilot: { ...SPRING_PILOT, jets: [45] } }), SEA_LEVEL, SPAN);
    expect(one.stretches[0]).toMatchObject({ jet: 45, reach: 'held' });
    expect(one.stretches[0]!.points.every(({ turns }) => turns === SPRING_PILOT.mostTurns)).toBe(true);
    expect(one.takeovers[0]).toMatchObject({ colder: { reach: 'held' }, warmer: { reach: 'within' } });
  });

  it('knows nothing outside its span', () => {
    expect(dialAt(dial, fahrenheitToKelvin(61))).toBeNull();
    expect(dialAt(dial, fahrenheitToKelvin(-51))).toBeNull();
  });
});
