import type { Pilot } from '@/lib/carb/machine';
import { pilotFor } from '@/lib/carb/pilot';
import { mixtureFactor } from '@/lib/power/relative-power';
import { type Ratio, ratio } from '@/lib/units/quantity';

/** What too much fuel from the pilot costs while the engine runs on it: idle to about a quarter throttle. */
export type RichCost = { readonly richer: Ratio; readonly powerLost: Ratio };

export type BigPilotCost = {
  /** The next pilot owned above the right one; null where one would have to be bought. */
  readonly jet: number | null;
  /** With the screw left where the right pilot wants it. */
  readonly screwLeft: RichCost;
  /** With the screw turned as lean as it goes, or as far as it takes. */
  readonly screwSet: RichCost & { readonly turns: number };
};

/**
 * What a pilot one size too big costs in air that the right one serves.
 *
 *     richer = r, or what the screw cannot take back;   power lost = k richer²
 *
 * r the fuel of one pilot size. The share of power is that of the mixture, as everywhere.
 *
 * @param logNeed ln of pilot fuel wanted over the baseline's
 */
export function bigPilotCost(pilot: Pilot, logNeed: number, richPowerLoss: number): BigPilotCost {
  const right = pilotFor(pilot, logNeed);
  const larger = [...new Set([pilot.jet, ...pilot.jets])].filter((jet) => jet > right.jet);
  const jet = larger.length === 0 ? null : Math.min(...larger);
  const logSize = Math.log1p(pilot.richerPerSize);
  const outward = pilot.screw === 'fuel' ? 1 : -1;
  const wanted = right.turns - outward * pilot.turnsPerSize;
  const turns = Math.min(Math.max(wanted, pilot.leastTurns), pilot.mostTurns);
  const left = Math.max(0, (outward * (turns - wanted) * logSize) / pilot.turnsPerSize);
  return {
    jet,
    screwLeft: costOf(logSize, richPowerLoss),
    screwSet: { turns, ...costOf(left, richPowerLoss) },
  };
}

function costOf(log: number, richPowerLoss: number): RichCost {
  const richer = ratio(Math.expm1(log));
  return { richer, powerLost: ratio(1 - mixtureFactor(richer, richPowerLoss)) };
}
