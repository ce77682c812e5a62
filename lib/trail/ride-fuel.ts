import type { Air } from '@/lib/air/air';
import { logDelivered } from '@/lib/carb/drift';
import { intakeAir } from '@/lib/carb/intake';
import { jetArea } from '@/lib/carb/jets';
import type { Machine, Setting } from '@/lib/carb/machine';
import { logIdealArea } from '@/lib/carb/response';
import { HOUR_MS } from '@/lib/time/instant';
import { type Metre, type Ratio, ratio } from '@/lib/units/quantity';
import { legsOf, movingMs, type Ride } from './ride';
import type { RidePlan } from './ride-plan';

/** What the machine drinks on the baseline in the baseline's air, as its rider knows it. */
export type Consumption =
  | { readonly kind: 'per-hour'; readonly litres: number }
  | { readonly kind: 'per-distance'; readonly litresPerKilometre: number };

export type RideFuel = {
  /** Fuel over that of the baseline in its own air at the same throttle and revs, mean over the time on the move. */
  readonly overBaseline: Ratio;
  /** The same if the mixture were right all the way: what the air alone asks for. */
  readonly ofTheAir: Ratio;
  /** null where the length of the way is not known and the consumption is per distance. */
  readonly litres: number | null;
};

/**
 * Fuel at one moment over the baseline's, at the same throttle and revs.
 *
 *     fuel = (1 + drift) ρ_dry/ρ_dry0
 *
 * The engine fills with the same volume, so its fuel goes with the dry air in it and the mixture. Airs at the
 * carburettor; with several carburettors each counts by its baseline jet's area. Elementary carburettor: see lib/carb.
 */
export function fuelRatio(machine: Machine, setting: Setting, ambient: Air): Ratio {
  const dry = dryRatio(machine, ambient);
  const ideal = logIdealArea(machine, ambient);
  const areas = machine.carburettors.map(({ main }) => jetArea(machine.marking, main));
  const whole = areas.reduce((sum, area) => sum + area, 0);
  const mixture = logDelivered(machine, setting).reduce(
    (sum, delivered, i) => sum + (areas[i]! / whole) * Math.exp(delivered - ideal),
    0,
  );
  return ratio(mixture * dry);
}

function dryRatio(machine: Machine, ambient: Air): number {
  const { dryDensity } = intakeAir(ambient, machine.intakeOffset);
  return dryDensity / intakeAir(machine.baselineAir, machine.baselineIntakeOffset).dryDensity;
}

/** Fuel for the day from the consumption at the baseline. */
export function rideFuel(
  machine: Machine,
  planned: { readonly ride: Ride; readonly answer: RidePlan },
  consumption: Consumption,
): RideFuel {
  const { ride, answer } = planned;
  const overBaseline = meanOnTheMove(ride, answer, (air) => fuelRatio(machine, answer.setting, air));
  const ofTheAir = meanOnTheMove(ride, answer, (air) => dryRatio(machine, air));
  return { overBaseline, ofTheAir, litres: litresOf(ride, consumption, overBaseline) };
}

function litresOf(ride: Ride, consumption: Consumption, over: Ratio): number | null {
  if (consumption.kind === 'per-hour') return (movingMs(ride) / HOUR_MS) * consumption.litres * over;
  const metres: Metre | null = ride.distance;
  return metres === null ? null : (metres / 1000) * consumption.litresPerKilometre * over;
}

/** Mean over the time on the move, straight between the moments (trapezoid rule). */
function meanOnTheMove(ride: Ride, { plan }: RidePlan, of: (air: Air) => number): Ratio {
  const moments = plan.hours.map(({ at, air }) => ({ at, value: of(air) }));
  let [sum, time] = [0, 0];
  for (const { from, to } of legsOf(ride)) {
    const within = moments.filter(({ at }) => at >= from.leave && at <= to.arrive);
    for (const [i, b] of within.entries()) {
      const a = within[i - 1];
      if (a === undefined) continue;
      sum += ((a.value + b.value) / 2) * (b.at - a.at);
      time += b.at - a.at;
    }
  }
  return ratio(sum / time);
}
