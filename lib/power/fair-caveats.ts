import type { Ratio } from '@/lib/units/quantity';
import { ratio } from '@/lib/units/quantity';
import { type CorrectionCaveat, correction } from './correction';
import type { Pull, Side } from './pull';
import type { Difference } from './repeats';
import type { StandardId } from './standards';

/** What keeps a comparison from being as sure as its numbers look. Sentences for these live in lib/words. */
export type FairCaveat =
  | { readonly code: 'correction'; readonly side: Side; readonly caveat: CorrectionCaveat }
  /** No repeats at all: the scatter of a pull is a guess. */
  | { readonly code: 'scatter-assumed'; readonly scatter: Ratio }
  | { readonly code: 'scatter-from-one-side' }
  /** Times or speeds in air of different density: drag changed too, and is not taken out. */
  | { readonly code: 'drag-not-corrected'; readonly densityRatio: Ratio }
  /** Leaner than the baseline: a gain that this mixture may have made is not credited to it. */
  | { readonly code: 'leaner-than-baseline'; readonly side: Side; readonly drift: Ratio };

/** One percent of density is a third of a percent of speed at most. */
const DENSITY_WORTH_SAYING = 0.01;

const meanOf = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

/** The same caveat in several pulls of a side is said once, with the first pull's numbers. */
function correctionCaveats(standard: StandardId, side: Side, pulls: readonly Pull[]): FairCaveat[] {
  const byCode = new Map<string, CorrectionCaveat>();
  for (const caveat of pulls.flatMap((pull) => correction(standard, pull.air).caveats))
    if (!byCode.has(caveat.code)) byCode.set(caveat.code, caveat);
  return [...byCode.values()].map((caveat) => ({ code: 'correction', side, caveat }));
}

export function fairCaveats(given: {
  readonly standard: StandardId;
  readonly pulls: Readonly<Record<Side, readonly Pull[]>>;
  readonly repeats: Difference;
  readonly assumedScatter: Ratio;
}): readonly FairCaveat[] {
  const { standard, pulls, repeats, assumedScatter } = given;
  const sides = ['before', 'after'] as const;
  const caveats = sides.flatMap((side) => correctionCaveats(standard, side, pulls[side]));
  if (repeats.scatter === 'assumed') caveats.push({ code: 'scatter-assumed', scatter: assumedScatter });
  if (repeats.scatter === 'seen-on-one-side') caveats.push({ code: 'scatter-from-one-side' });
  const [from, to] = sides.map((side) => meanOf(pulls[side].map(({ air }) => air.density)));
  const densityRatio = ratio((to ?? 1) / (from ?? 1));
  const onTheDyno = pulls.before.every(({ measured }) => measured.kind === 'power');
  if (!onTheDyno && Math.abs(densityRatio - 1) > DENSITY_WORTH_SAYING)
    caveats.push({ code: 'drag-not-corrected', densityRatio });
  for (const side of sides) {
    const drift = ratio(meanOf(pulls[side].map((pull) => pull.drift.mean)));
    const sd = meanOf(pulls[side].map((pull) => pull.drift.sd));
    if (drift < -sd) caveats.push({ code: 'leaner-than-baseline', side, drift });
  }
  return caveats;
}
