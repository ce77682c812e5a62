import { type Information, informationOn } from './information';
import type { JetEvidence } from './jet-evidence';
import type { BaselineShift, Machine, Response, ResponseOrigin } from './machine';
import { heavyTailed } from './mixture';
import type { Belief, RegressionRow } from './regression';
import { DEFAULT_RESPONSE } from './response';
import { type RowDiagnosis, robustFit } from './robust-fit';
import { logSizeStep } from './size-step';

export type Interval = { readonly low: number; readonly high: number };

/** One piece of evidence beside what the fit makes of it. */
export type LearnedEntry = {
  readonly id: string;
  readonly group: JetEvidence['group'];
  /** ln of the right area over the baseline's, as observed and as fitted, with the group's own level taken off. */
  readonly observed: number;
  readonly fitted: number;
  /** Distance from what all the others say, in standard deviations. */
  readonly standardised: number;
  /** Share of its evidence that counted: less than 1 where it stands apart. */
  readonly weight: number;
  readonly outlier: boolean;
  /** How far this entry moved each exponent. */
  readonly influence: { readonly pressure: number; readonly temperature: number };
};

export type Learned = {
  readonly response: Response;
  readonly origin: ResponseOrigin;
  /** What was believed before the evidence. */
  readonly prior: Response;
  /** 90 % intervals of the exponents. */
  readonly pressure: Interval & Information;
  readonly temperature: Interval & Information;
  /** What the log says about the baseline itself; null without a log. */
  readonly baselineShift: BaselineShift | null;
  readonly entries: readonly LearnedEntry[];
  /** Root mean square of the standardised distances: 1 is scatter as stated, 2 twice as much; null without evidence. */
  readonly scatter: number | null;
};

/** Two-sided 90 % point of the normal distribution. */
const Z_90 = 1.6448536269514722;
/** An entry further than this from what the others say is called an outlier: one normal entry in 370. */
const OUTLIER_SD = 3;
/** A chart may be for other jets altogether, earlier runs for other parts: their level is left open (sd of ln area). */
const OPEN_LEVEL_SD = 1;
/** How well a baseline judged right is known, in sizes, where nothing else is said. Judgement, no source. */
const BASELINE_SD_SIZES = 0.5;

/**
 * Belief in the response exponents after chart and log.
 *
 *     z = ln(A/A0) − ln need + ½ ln(p/p0) + ½ ln(T0/T) = a + n_p ln(p/p0) + n_T ln(T0/T) + ε
 *
 * Linear in the level a (one for the chart, one for the log, one for runs before a part was changed) and the two exponents, so the posterior has a closed form.
 *
 * @param machine its baseline is where the logs are counted from; its response is not used, so nothing counts twice
 * @param prior belief before this evidence; all evidence must be given each time
 */
export function learnResponse(
  machine: Machine,
  observations: readonly JetEvidence[],
  prior: Response = DEFAULT_RESPONSE,
): Learned {
  const groups = (['chart', 'log', 'log-before'] as const).filter((group) =>
    observations.some((o) => o.group === group),
  );
  const belief = priorBelief(machine, prior, groups);
  const rows = observations.map((observation) => rowOf(observation, groups));
  const fit = robustFit(heavyTailed(belief), rows);
  const response = responseOf(fit.posterior);
  const information = informationOn(
    belief,
    fit.posterior,
    rows,
    fit.rows.map((row) => row.weight),
  );
  const level = 2 + groups.indexOf('log');
  return {
    response,
    origin: originOf(groups),
    prior,
    pressure: { ...interval90(response.pressureExponent, response.pressureSd), ...information.pressure },
    temperature: {
      ...interval90(response.temperatureExponent, response.temperatureSd),
      ...information.temperature,
    },
    baselineShift: groups.includes('log')
      ? { log: fit.posterior.mean[level]!, sd: Math.sqrt(fit.posterior.covariance[level]![level]!) }
      : null,
    entries: observations.map((observation, i) => entryOf(observation, rows[i]!, fit.rows[i]!, response)),
    scatter: rootMeanSquare(fit.rows.map((row) => row.standardised)),
  };
}

export function interval90(mean: number, sd: number): Interval {
  return { low: mean - Z_90 * sd, high: mean + Z_90 * sd };
}

function originOf(groups: readonly JetEvidence['group'][]): ResponseOrigin {
  const chart = groups.includes('chart');
  if (groups.some((group) => group !== 'chart')) return chart ? 'chart-and-log' : 'log';
  return chart ? 'chart' : 'prior';
}

/** β = (n_p, n_T, one level per group). */
function priorBelief(machine: Machine, prior: Response, groups: readonly JetEvidence['group'][]): Belief {
  const known = machine.baselineShift;
  const step = logSizeStep(machine, machine.carburettors[0]!.main);
  const levels = groups.map((group) => {
    if (group !== 'log') return { log: 0, sd: OPEN_LEVEL_SD };
    return known !== undefined && known.sd > 0
      ? known
      : { log: known?.log ?? 0, sd: BASELINE_SD_SIZES * step };
  });
  const { pressureSd, temperatureSd, correlation } = prior;
  const both = correlation * pressureSd * temperatureSd;
  const zeros = levels.map(() => 0);
  return {
    mean: [prior.pressureExponent, prior.temperatureExponent, ...levels.map((level) => level.log)],
    covariance: [
      [pressureSd ** 2, both, ...zeros],
      [both, temperatureSd ** 2, ...zeros],
      ...levels.map((level, i) => [0, 0, ...levels.map((_, j) => (i === j ? level.sd ** 2 : 0))]),
    ],
  };
}

function rowOf(
  { shift, logArea, sd, group }: JetEvidence,
  groups: readonly JetEvidence['group'][],
): RegressionRow {
  return {
    x: [shift.pressure, shift.cold, ...groups.map((name) => (name === group ? 1 : 0))],
    y: logArea - shift.need + (shift.pressure + shift.cold) / 2,
    sd,
  };
}

function responseOf({ mean, covariance }: Belief): Response {
  const pressureSd = Math.sqrt(covariance[0]![0]!);
  const temperatureSd = Math.sqrt(covariance[1]![1]!);
  return {
    pressureExponent: mean[0]!,
    temperatureExponent: mean[1]!,
    pressureSd,
    temperatureSd,
    correlation: covariance[0]![1]! / (pressureSd * temperatureSd),
  };
}

function entryOf(
  observation: JetEvidence,
  row: RegressionRow,
  diagnosis: RowDiagnosis,
  response: Response,
): LearnedEntry {
  const { shift, id, group } = observation;
  const fitted =
    shift.need +
    (response.pressureExponent - 0.5) * shift.pressure +
    (response.temperatureExponent - 0.5) * shift.cold;
  return {
    id,
    group,
    observed: fitted + row.y - diagnosis.fitted,
    fitted,
    standardised: diagnosis.standardised,
    weight: diagnosis.weight,
    outlier: Math.abs(diagnosis.standardised) > OUTLIER_SD,
    influence: { pressure: diagnosis.influence[0]!, temperature: diagnosis.influence[1]! },
  };
}

function rootMeanSquare(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  return Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);
}
