import type { Machine } from '@/lib/carb/machine';
import { needleFor } from '@/lib/carb/needle';
import { logOfTurns, type PilotAdvice, pilotFor, settableTurns } from '@/lib/carb/pilot';
import type { PlanHour } from '@/lib/plan/types';
import { mixtureFactor } from '@/lib/power/relative-power';
import { type Ratio, ratio } from '@/lib/units/quantity';
import type { RidePlan } from './ride-plan';
import { circuitNeed } from './season';

/** What one setting of a circuit costs at a moment of the ride: its mixture there, and the power lost to it. */
export type CircuitCost = { readonly at: PlanHour; readonly drift: Ratio; readonly powerLost: Ratio };

/** One setting of a circuit for the whole ride, chosen in the air that asks it for the most fuel. */
export type RideCircuit = {
  /** How far off it is in the air it was chosen for; negative where it has no way left and stays lean. */
  readonly thickest: CircuitCost;
  /** Where the air asks it for the least fuel: what one setting for all of it costs at worst. */
  readonly worst: CircuitCost;
};

export type RidePilot = RideCircuit & { readonly advice: PilotAdvice };
export type RideClip = RideCircuit & { readonly groove: number; readonly beyondNeedle: boolean };

/** null where the machine's pilot or needle was not described. */
export type RideCircuits = { readonly pilot: RidePilot | null; readonly clip: RideClip | null };

/**
 * Screw, pilot and clip for a whole ride, which is ridden on them far more than on the main: each as lean as its thickest
 * air allows, and what it costs where the air is thinnest.
 *
 *     drift = e^(ln delivered − ln need) − 1
 *
 * with the screw by the richer eighth it is really set to. Circuits work alone, so their need is the orifice law's.
 */
export function rideCircuits(machine: Machine, { plan }: RidePlan): RideCircuits {
  const runs = plan.sortedRuns;
  const ridden = plan.hours.filter(({ at }) => runs.some(({ start, end }) => at >= start && at <= end));
  const needs = ridden.map((hour) => ({ hour, need: circuitNeed(machine, hour.air) }));
  const most = needs.reduce((a, b) => (b.need > a.need ? b : a));
  const least = needs.reduce((a, b) => (b.need < a.need ? b : a));
  const costs = (delivered: number): RideCircuit => {
    const cost = ({ hour, need }: typeof most): CircuitCost => {
      const drift = ratio(Math.expm1(delivered - need));
      return { at: hour, drift, powerLost: ratio(1 - mixtureFactor(drift, machine.richPowerLoss)) };
    };
    return { thickest: cost(most), worst: cost(least) };
  };
  const { pilot, needle } = machine;
  const advice = pilot === null ? null : pilotFor(pilot, most.need);
  const clip = needle === null ? null : needleFor(needle, most.need, machine.limits.lean);
  return {
    pilot:
      pilot === null || advice === null
        ? null
        : {
            advice,
            ...costs(
              most.need +
                advice.logLeft +
                logOfTurns(settableTurns(advice.turns, pilot), advice.turns, pilot),
            ),
          },
    clip:
      clip === null
        ? null
        : { groove: clip.groove, beyondNeedle: clip.beyondNeedle, ...costs(most.need + clip.logLeft) },
  };
}
