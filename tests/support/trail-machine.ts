import type { Machine, Pilot } from '@/lib/carb/machine';
import { ratio } from '@/lib/units/quantity';
import { airOfFahrenheit, raceMachine } from './race-machine';

/** Common practice, no source: a fuel screw a turn out in spring, with range to 2 1/4, a pilot size worth 1 1/4 turns. */
export const SPRING_PILOT: Pilot = {
  jet: 45,
  jets: [42.5, 45, 47.5, 50],
  screw: 'fuel',
  turns: 1,
  leastTurns: 0.5,
  mostTurns: 2.25,
  turnsPerSize: 1.25,
  richerPerSize: ratio(0.06),
};

/** The same circuit behind an air screw: in is richer. */
export const AIR_SCREW_PILOT: Pilot = { ...SPRING_PILOT, screw: 'air', turns: 1.75 };

/** An invented trail twin, proven at 30 °F and standard sea-level pressure. */
export function trailMachine(change: Partial<Machine> = {}): Machine & { readonly pilot: Pilot } {
  return {
    ...raceMachine({
      baselineAir: airOfFahrenheit(30),
      needle: { groove: 3, grooves: 5, richerPerGroove: ratio(0.025) },
      ...change,
    }),
    pilot: change.pilot ?? SPRING_PILOT,
  };
}
