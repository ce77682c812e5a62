import type { Air } from '@/lib/air/air';
import { fail, ok, type Result } from '@/lib/result/result';
import type { Metre, Ratio, Second, SpeedMs, Watt } from '@/lib/units/quantity';

/** What was measured in a pull on a dyno or a run on a track. */
export type Measured =
  | { readonly kind: 'power'; readonly power: Watt }
  /** Time over a distance; the distance may be left out where it is the same for all. */
  | { readonly kind: 'time'; readonly time: Second; readonly distance: Metre | null }
  | { readonly kind: 'speed'; readonly speed: SpeedMs };

/** How far the mixture stood from the baseline's, and how surely that is known (one standard deviation). */
export type UncertainDrift = { readonly mean: Ratio; readonly sd: Ratio };

export type Pull = {
  readonly measured: Measured;
  /** Air at the engine's inlet. */
  readonly air: Air;
  readonly drift: UncertainDrift;
};

export type Side = 'before' | 'after';

/** Why pulls cannot be compared. Sentences for these live in lib/words. */
export type FairProblem =
  | { readonly code: 'no-pulls'; readonly side: Side }
  /** Power, times and speeds cannot stand in for each other. */
  | { readonly code: 'mixed-measures' }
  | { readonly code: 'different-distances' }
  | { readonly code: 'not-above-zero'; readonly side: Side; readonly index: number };

/**
 * Natural log of power, up to a constant that is the same for all pulls of one kind.
 *
 *     ln P = 3 ln v = -3 ln t + const
 *
 * At top speed drag takes the cube of speed, and a standing start at constant power has t ∝ P^(-1/3) too.
 */
export function logPower(measured: Measured): number {
  switch (measured.kind) {
    case 'power':
      return Math.log(measured.power);
    case 'time':
      return -3 * Math.log(measured.time);
    case 'speed':
      return 3 * Math.log(measured.speed);
  }
}

function size(measured: Measured): number {
  if (measured.kind === 'power') return measured.power;
  return measured.kind === 'time' ? measured.time : measured.speed;
}

function distances(pulls: readonly Pull[]): ReadonlySet<number | null> {
  return new Set(pulls.map(({ measured }) => (measured.kind === 'time' ? measured.distance : null)));
}

/** The first thing that keeps the pulls from being compared. */
export function checkPulls(sides: Readonly<Record<Side, readonly Pull[]>>): Result<null, FairProblem> {
  for (const side of ['before', 'after'] as const) {
    if (sides[side].length === 0) return fail({ code: 'no-pulls', side });
    const index = sides[side].findIndex(({ measured }) => !(size(measured) > 0));
    if (index >= 0) return fail({ code: 'not-above-zero', side, index });
  }
  const all = [...sides.before, ...sides.after];
  if (new Set(all.map(({ measured }) => measured.kind)).size > 1) return fail({ code: 'mixed-measures' });
  return distances(all).size > 1 ? fail({ code: 'different-distances' }) : ok(null);
}
