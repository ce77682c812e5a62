import { ok, type Result } from '@/lib/result/result';
import { type Ratio, ratio, type Watt, watt } from '@/lib/units/quantity';
import { correctionFactor } from './correction';
import { type FairCaveat, fairCaveats } from './fair-caveats';
import { type MixtureBelief, mixtureShare } from './mixture-share';
import { checkPulls, type FairProblem, logPower, type Pull, type Side } from './pull';
import { DEFAULT_RICH_POWER_LOSS } from './relative-power';
import { type Difference, differenceOfMeans } from './repeats';
import { STANDARD_IDS, type StandardId } from './standards';
import { studentHalfWidth } from './student-t';

export type FairOptions = {
  readonly standard: StandardId;
  /** k of power = 1 - k drift², with its standard deviation: an assumption, so not a sure one. */
  readonly richPowerLoss: { readonly mean: number; readonly sd: number };
  /** Share of such intervals that should hold the truth. */
  readonly confidence: number;
  /** Scatter of one pull where there are no repeats to show it (common practice, no source). */
  readonly assumedScatter: Ratio;
};

export const DEFAULT_FAIR_OPTIONS: FairOptions = {
  standard: 'sae-j1349-2004',
  richPowerLoss: { mean: DEFAULT_RICH_POWER_LOSS, sd: 0.7 },
  confidence: 0.9,
  assumedScatter: ratio(0.01),
};

/** A share of the change, relative to the power before. Air, mixture and part add up to the total. */
export type Share = {
  readonly change: Ratio;
  readonly low: Ratio;
  readonly high: Ratio;
  /** The same in watts; null where times or speeds were measured. */
  readonly power: { readonly change: Watt; readonly low: Watt; readonly high: Watt } | null;
};

export type FairVerdict =
  | 'part-gains'
  | 'part-costs'
  /** The change is real, the part's share may be nothing, and mixture made most of it. */
  | 'explained-by-mixture'
  | 'explained-by-air'
  /** The change is real and neither air nor mixture makes half of it, but the part is not proven either. */
  | 'unclear'
  /** The change is no larger than pulls differ among themselves. */
  | 'no-difference-shown';

export type FairComparison = {
  readonly total: Share;
  readonly air: Share;
  readonly mixture: Share;
  readonly part: Share;
  /** Mean power of each side in the standard's air and at the baseline's mixture; null for times and speeds. */
  readonly corrected: Readonly<Record<Side, Watt>> | null;
  readonly verdict: FairVerdict;
  readonly caveats: readonly FairCaveat[];
};

type Sides = Readonly<Record<Side, readonly Pull[]>>;

const meanOf = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

const meanLogCorrection = (standard: StandardId, pulls: readonly Pull[]): number =>
  meanOf(pulls.map((pull) => Math.log(correctionFactor(standard, pull.air))));

/**
 * Change of ln power that air alone makes. Its uncertainty is how much the standards differ over the same two airs:
 * their exponents are all that is known about it.
 */
function airShare(standard: StandardId, { before, after }: Sides): MixtureBelief {
  const change = (id: StandardId) => meanLogCorrection(id, before) - meanLogCorrection(id, after);
  const changes = STANDARD_IDS.map(change);
  const middle = meanOf(changes);
  const variance = changes.reduce((sum, c) => sum + (c - middle) ** 2, 0) / (changes.length - 1);
  return { mean: change(standard), variance };
}

/** ln power with air taken out, one value a pull; mixture is taken out of the means. */
const airCorrected = (standard: StandardId, pulls: readonly Pull[]): readonly number[] =>
  pulls.map((pull) => logPower(pull.measured) + Math.log(correctionFactor(standard, pull.air)));

/** Half-width of the interval of a sum of what repeats show and what is believed besides (Satterthwaite). */
function halfWidth(
  repeats: Difference | null,
  beliefs: readonly MixtureBelief[],
  confidence: number,
): number {
  const believed = beliefs.reduce((sum, belief) => sum + belief.variance, 0);
  const scatter = repeats?.variance ?? 0;
  const variance = scatter + believed;
  if (variance === 0) return 0;
  const degreesOfFreedom =
    scatter === 0 || repeats === null
      ? Number.POSITIVE_INFINITY
      : (variance / scatter) ** 2 * repeats.degreesOfFreedom;
  return studentHalfWidth(confidence, degreesOfFreedom) * Math.sqrt(variance);
}

function verdictOf({
  total,
  air,
  mixture,
  part,
}: Pick<FairComparison, 'total' | 'air' | 'mixture' | 'part'>): FairVerdict {
  if (part.low > 0) return 'part-gains';
  if (part.high < 0) return 'part-costs';
  if (total.low <= 0 && total.high >= 0) return 'no-difference-shown';
  const [byAir, byMixture] = [air.change / total.change, mixture.change / total.change];
  if (Math.max(byAir, byMixture) < 0.5) return 'unclear';
  return byMixture >= byAir ? 'explained-by-mixture' : 'explained-by-air';
}

/**
 * What a part did, with air and mixture taken out of the difference between pulls before and after it.
 *
 *     ln P_after - ln P_before = air + mixture + part
 *
 * Air by a correction standard, mixture by 1 - k drift², the part is what is left. Shares are spread over the total
 * in proportion to their logs, so that they add up to it.
 */
export function fairComparison(
  before: readonly Pull[],
  after: readonly Pull[],
  options: FairOptions = DEFAULT_FAIR_OPTIONS,
): Result<FairComparison, FairProblem> {
  const sides: Sides = { before, after };
  const checked = checkPulls(sides);
  if (!checked.ok) return checked;
  const { standard, confidence, assumedScatter } = options;
  const raw = (pulls: readonly Pull[]) => pulls.map((pull) => logPower(pull.measured));
  const measured = differenceOfMeans(raw(before), raw(after), assumedScatter);
  const repeats = differenceOfMeans(
    airCorrected(standard, before),
    airCorrected(standard, after),
    assumedScatter,
  );
  const air = airShare(standard, sides);
  const mixture = mixtureShare(before, after, options.richPowerLoss);
  const onTheDyno = before.every((pull) => pull.measured.kind === 'power');
  const powerBefore = onTheDyno ? Math.exp(meanOf(raw(before))) : null;
  const perLog = measured.mean === 0 ? 1 : Math.expm1(measured.mean) / measured.mean;
  const share = (mean: number, width: number): Share => shareOf({ mean, width, perLog, powerBefore });
  const shares = {
    total: share(measured.mean, halfWidth(measured, [], confidence)),
    air: share(air.mean, halfWidth(null, [air], confidence)),
    mixture: share(mixture.mean, halfWidth(null, [mixture], confidence)),
    part: share(repeats.mean - mixture.mean, halfWidth(repeats, [air, mixture], confidence)),
  };
  return ok({
    ...shares,
    corrected: powerBefore === null ? null : correctedPowers(sides, options),
    verdict: verdictOf(shares),
    caveats: fairCaveats({ standard, pulls: sides, repeats, assumedScatter }),
  });
}

function shareOf(given: {
  readonly mean: number;
  readonly width: number;
  readonly perLog: number;
  readonly powerBefore: number | null;
}): Share {
  const { mean, width, perLog, powerBefore } = given;
  const [change, low, high] = [mean * perLog, (mean - width) * perLog, (mean + width) * perLog];
  const power =
    powerBefore === null
      ? null
      : { change: watt(change * powerBefore), low: watt(low * powerBefore), high: watt(high * powerBefore) };
  return { change: ratio(change), low: ratio(low), high: ratio(high), power };
}

/** Mean power of each side in the standard's air and at the baseline's mixture [W]. */
function correctedPowers(
  sides: Sides,
  { standard, richPowerLoss }: FairOptions,
): Readonly<Record<Side, Watt>> {
  // Against itself without drift, a side's mixture share is its whole loss.
  const power = (pulls: readonly Pull[]) => {
    const undrifted = pulls.map((pull) => ({ ...pull, drift: { mean: ratio(0), sd: ratio(0) } }));
    const loss = mixtureShare(undrifted, pulls, richPowerLoss).mean;
    return watt(Math.exp(meanOf(airCorrected(standard, pulls)) - loss));
  };
  return { before: power(sides.before), after: power(sides.after) };
}
