import type { Air } from '@/lib/air/air';
import type { Pull } from '@/lib/power/pull';
import { horsepowerToWatt } from '@/lib/units/convert';
import { metre, ratio, second } from '@/lib/units/quantity';

/** Pulls on a dyno: horsepower in one air, at a drift known to one standard deviation. */
export function dynoPulls(
  horsepower: readonly number[],
  air: Air,
  drift: { readonly mean: number; readonly sd: number } = { mean: 0, sd: 0.01 },
): readonly Pull[] {
  return horsepower.map((hp) => ({
    measured: { kind: 'power', power: horsepowerToWatt(hp) },
    air,
    drift: { mean: ratio(drift.mean), sd: ratio(drift.sd) },
  }));
}

/** Runs over a distance: seconds in one air, at the baseline's mixture. */
export function timedRuns(
  seconds: readonly number[],
  air: Air,
  distanceM: number | null = 200,
): readonly Pull[] {
  return seconds.map((s) => ({
    measured: { kind: 'time', time: second(s), distance: distanceM === null ? null : metre(distanceM) },
    air,
    drift: { mean: ratio(0), sd: ratio(0.01) },
  }));
}
