import type { Pilot } from './machine';

/** One thing to try on an idle that hangs high after a hard run. */
export type HangingIdleStep =
  /** Air that comes in behind the carburettor, through a boot, a gasket or a crank seal: the engine runs lean. */
  | { readonly act: 'find-leak' }
  | { readonly act: 'lower-idle' }
  /** Richer by the screw: a fuel screw out, an air screw in, and how many turns are left that way. */
  | { readonly act: 'richer-by-screw'; readonly way: 'out' | 'in'; readonly turnsLeft: number }
  /** The next larger pilot owned; null where none is, and one would have to be bought. */
  | { readonly act: 'bigger-pilot'; readonly jet: number | null };

/**
 * What to try, in this order, on an idle that hangs after a hard run: the dangerous cause first, since fuel from screw
 * or pilot only hides a leak that ends in a seizure; then the idle stop, the screw while it has range, and a bigger
 * pilot last, since that is rich everywhere below. Common practice, no source.
 *
 * @param turns where the screw stands now
 */
export function hangingIdleSteps(pilot: Pilot, turns: number = pilot.turns): readonly HangingIdleStep[] {
  const turnsLeft = pilot.screw === 'fuel' ? pilot.mostTurns - turns : turns - pilot.leastTurns;
  const way = pilot.screw === 'fuel' ? 'out' : 'in';
  const larger = pilot.jets.filter((jet) => jet > pilot.jet);
  const jet = larger.length === 0 ? null : Math.min(...larger);
  const screw = turnsLeft > 0 ? [{ act: 'richer-by-screw', way, turnsLeft } as const] : [];
  return [{ act: 'find-leak' }, { act: 'lower-idle' }, ...screw, { act: 'bigger-pilot', jet }];
}
