import type { CorrectionCaveat } from '@/lib/power/correction';
import type { FairCaveat } from '@/lib/power/fair-caveats';
import type { FairComparison, FairVerdict, Share } from '@/lib/power/fair-comparison';
import type { FairProblem, Side } from '@/lib/power/pull';
import type { PowerStandard } from '@/lib/power/standards';
import type { UnitChoice } from '@/lib/units/choice';
import {
  formatNumber,
  formatPercent,
  formatPressure,
  formatSignedPercent,
  formatSignedPower,
  formatTemperature,
} from '@/lib/units/format';
import { ratio, type Watt } from '@/lib/units/quantity';
import { signedHorsepower } from './power-words';

/** Name and edition, never one without the other: editions differ. */
export function standardText({ name, revision }: PowerStandard): string {
  return `${name} (${revision})`;
}

/**
 * "+3.1 hp (+0.9 to +5.3), +2.1 %"; where no power was measured percent, "+2.1 % (+0.6 % to +3.6 %)", and the
 * horsepower that is of the rated power, where one was given.
 */
export function shareText({ change, low, high, power }: Share, ratedPower: Watt | null): string {
  const percent = formatSignedPercent(change);
  if (power === null) {
    const rated = signedHorsepower(change, ratedPower);
    return `${percent} (${formatSignedPercent(low)} to ${formatSignedPercent(high)})${rated === '' ? '' : `, ${rated}`}`;
  }
  return `${formatSignedPower(power.change)} (${formatSignedPower(power.low)} to ${formatSignedPower(power.high)}), ${percent}`;
}

const VERDICTS: Readonly<Record<FairVerdict, string>> = {
  'part-gains': 'The part makes power.',
  'part-costs': 'The part costs power.',
  'explained-by-mixture': 'The change is explained by the mixture, not proven for the part.',
  'explained-by-air': 'The change is explained by the air, not proven for the part.',
  unclear: 'Something changed, but the part is not proven.',
  'no-difference-shown': 'No difference is shown.',
};

export function verdictTitle(verdict: FairVerdict): string {
  return VERDICTS[verdict];
}

/** What is left for the part and what else made the change. */
export function verdictSentences(
  comparison: FairComparison,
  { part, ratedPower }: { readonly part: string; readonly ratedPower: Watt | null },
): readonly string[] {
  const { total, air, mixture, verdict } = comparison;
  const name = part.trim() === '' ? 'the part' : `“${part.trim()}”`;
  const text = (share: Share) => shareText(share, ratedPower);
  const left = `Of the change of ${text(total)}, the air makes ${text(air)}, the mixture ${text(mixture)}; what is left for ${name} is ${text(comparison.part)}.`;
  return [left, ...nextSentences(verdict, comparison)];
}

const width = ({ low, high }: Share): number => high - low;

function nextSentences(verdict: FairVerdict, { total, mixture }: FairComparison): readonly string[] {
  switch (verdict) {
    case 'explained-by-mixture':
      return mixture.change > 0
        ? [
            'It was rich before, and being leaner made most of the gain: the right jets alone would have brought it. Jet both sides right and run again.',
          ]
        : ['It is richer now, and that made most of the loss. Jet it right and run again.'];
    case 'explained-by-air':
      return ['Run both sides in the same air, or repeat each side, to see the part itself.'];
    case 'unclear':
      return width(mixture) > width(total)
        ? [
            'The doubt is mostly in the mixture: how rich each side was is not known well enough. Jet both sides right and run again.',
          ]
        : ['More repeats on each side narrow the interval.'];
    case 'no-difference-shown':
      return [
        'Pulls differ as much among themselves. More repeats on each side would show a smaller difference.',
      ];
    default:
      return [];
  }
}

const SIDES: Readonly<Record<Side, string>> = { before: 'before', after: 'after' };

export function fairProblemSentence(problem: FairProblem): string {
  switch (problem.code) {
    case 'no-pulls':
      return `There is no run ${SIDES[problem.side]} the part yet. Add at least one; three show how much they scatter.`;
    case 'mixed-measures':
      return 'Power, times and speeds cannot stand in for each other. Use one measure for all runs.';
    case 'different-distances':
      return 'The runs are over different distances. Use one distance for all.';
    case 'not-above-zero':
      return `Run ${problem.index + 1} ${SIDES[problem.side]} has a measure that is not greater than 0. Check the number.`;
  }
}

/** What keeps a comparison from being as sure as its numbers look. */
export function fairCaveatSentence(caveat: FairCaveat, units: UnitChoice): string {
  switch (caveat.code) {
    case 'correction':
      return `${capitalSide(caveat.side)}: ${correctionCaveatText(caveat.caveat, units)}`;
    case 'scatter-assumed':
      return `No side was repeated, so a scatter of ${formatPercent(caveat.scatter, 1)} a run is assumed (common practice, no source). Repeat each side three times.`;
    case 'scatter-from-one-side':
      return 'Only one side was repeated; the other is taken to scatter as much.';
    case 'drag-not-corrected':
      return `The air was ${formatSignedPercent(ratio(caveat.densityRatio - 1))} as dense after as before. Drag changes times and speeds with it, and is not taken out.`;
    case 'leaner-than-baseline':
      return `${capitalSide(caveat.side)} it was ${formatPercent(ratio(Math.abs(caveat.drift)), 1)} lean of right. What lean brings is not credited: it is a risk, not a gain.`;
  }
}

const capitalSide = (side: Side): string => (side === 'before' ? 'Before' : 'After');

const PRESSURE_MEANT = { dry: 'dry station pressure', total: 'station pressure' } as const;

function correctionCaveatText(caveat: CorrectionCaveat, units: UnitChoice): string {
  switch (caveat.code) {
    case 'factor-outside-range':
      return `the correction of ${formatNumber(caveat.factor, 3)} is outside the ${caveat.lowest} to ${caveat.highest} the standard allows.`;
    case 'temperature-outside-range':
      return `${formatTemperature(caveat.temperature, units)} is outside the ${formatTemperature(caveat.lowest, units)} to ${formatTemperature(caveat.highest, units)} the standard is for.`;
    case 'pressure-outside-range':
      return `a ${PRESSURE_MEANT[caveat.of]} of ${formatPressure(caveat.pressure, units)} is outside the ${formatPressure(caveat.lowest, units)} to ${formatPressure(caveat.highest, units)} the standard is for.`;
    case 'humidity-left-out':
      return `this standard leaves humidity out, and the air holds ${formatPercent(caveat.vapourShare, 1)} water vapour.`;
    case 'pressure-estimated':
      return 'the pressure is the standard atmosphere’s, not a measured one.';
  }
}
