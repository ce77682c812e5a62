import { baselineSetting } from '@/lib/carb/baseline-setting';
import { sizesAt } from '@/lib/carb/ideal';
import type { Setting } from '@/lib/carb/machine';
import { relativePower } from '@/lib/power/relative-power';
import type { Instant } from '@/lib/time/instant';
import { ratio } from '@/lib/units/quantity';
import { leanCountOf } from './grade';
import { meanLogIdeal } from './machine-need';
import { normalQuantile } from './normal';
import { chanceOver, levelAt, spreadAt } from './spread';
import { stateOf } from './state-of';
import type { PlanHour } from './types';
import type { View } from './view';

/** Standard deviations from the middle to the ends of an 80 % range. */
const FAN = normalQuantile(0.9);

/**
 * The night hour by hour: the air, the ideal with its fan, and how the baseline and the plan sit in it.
 *
 * @param settingAt what the plan has in the engine at an instant
 */
export function picture(view: View, settingAt: (at: Instant) => Setting): readonly PlanHour[] {
  const { machine, need, night, breathed } = view;
  const ideals = meanLogIdeal(need, breathed.hours);
  const leanLog = Math.log1p(-machine.limits.lean);
  const baseline = view.deliveredOf(baselineSetting(machine)).leanest;
  return night.series.hours.map((hour, i) => {
    const { at, origin } = hour;
    const { from, given } = night.hoursTold[i]!;
    const ideal = ideals[i]!;
    const spread = spreadAt(need, { curve: breathed.hours, track: night.hours, i, mean: ideal });
    const { leanest } = view.deliveredOf(settingAt(at));
    const drift = ratio(Math.expm1(leanest - ideal));
    const baselineDrift = ratio(Math.expm1(baseline - ideal));
    const chanceOfLean = ratio(chanceOver(spread, leanest - leanLog));
    return {
      at,
      origin,
      from,
      air: night.hourAirs[i]!,
      given,
      temperatureSd: night.hours.temperatureSd[i]!,
      ideal: sizesAt(machine, ideal),
      idealLow: sizesAt(machine, levelAt(spread, -FAN)),
      idealHigh: sizesAt(machine, levelAt(spread, FAN)),
      baselineDrift,
      baselineState: stateOf(baselineDrift, machine.limits),
      drift,
      chanceOfLean,
      leanCount: leanCountOf(chanceOfLean, machine.limits.risk, night.normals.draws),
      relativePower: relativePower({
        air: breathed.hourAirs[i]!,
        baselineAir: need.intake,
        drift,
        richPowerLoss: machine.richPowerLoss,
      }),
    };
  });
}
