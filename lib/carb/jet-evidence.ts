import type { Air } from '@/lib/air/air';
import { logDelivered } from './drift';
import { jetArea } from './jets';
import type { Machine, Setting } from './machine';
import { type AirShift, machineAirShift } from './response';
import { logSizeStep } from './size-step';
import { type CylinderVerdicts, eachCylinder, type LookedAt, type Verdict } from './verdicts';

/** One piece of evidence on which jet is right in which air. */
export type JetEvidence = {
  readonly id: string;
  /**
   * Entries of one group share a level of their own: a chart's jets are not the log's jets, and `log-before`, runs of
   * before a part was changed, are another engine's as far as the level goes. How that engine moved with the air counts.
   */
  readonly group: 'chart' | 'log' | 'log-before';
  readonly shift: AirShift;
  /** ln of the right jet area over the baseline jet's. */
  readonly logArea: number;
  /** Standard deviation of logArea. */
  readonly sd: number;
};

/** One cell of a maker's or tuner's chart; `air` is ambient air. */
export type ChartCell = { readonly id: string; readonly air: Air; readonly main: number };

export type JudgedBy = 'plugs' | 'exhaust-temperature' | 'wideband' | 'piston-wash' | 'clock' | 'feel';

/** One run with what was found after it; `air` is ambient air. */
export type LogEntry = {
  readonly id: string;
  readonly air: Air;
  readonly setting: Setting;
  readonly verdict: Verdict;
  /** By carburettor, where they were looked at one by one; `verdict` is then the leanest. */
  readonly verdicts?: CylinderVerdicts;
  /** How many sizes lean or rich; null where only the side is known. */
  readonly sizes: number | null;
  readonly judgedBy: JudgedBy | null;
};

/** Standard deviation of a verdict, in sizes. Judgement, no source; half a size is what reading plugs is taken to give. */
const VERDICT_SD: Readonly<Record<JudgedBy, number>> = {
  wideband: 0.3,
  plugs: 0.5,
  'piston-wash': 0.5,
  'exhaust-temperature': 0.6,
  clock: 1,
  feel: 1,
};
const UNKNOWN_JUDGE_SD = 0.75;
/** "Lean" or "rich" without a number: taken as one size, give or take this many. */
const SIDE_ONLY = { sizes: 1, sd: 0.75 };
/** Variance of rounding to a whole number, in units squared: uniform over ± ½. */
const ROUNDING_VARIANCE = 1 / 12;
/** How far a chart's author may stand from any smooth law beside rounding, in sizes. Judgement, no source. */
const CHART_AUTHOR_SD = 0.25;

/** A chart as evidence. A chart says a jet, rounded to a size that is made, so each cell is known to a rounding. */
export function evidenceOfChart(machine: Machine, cells: readonly ChartCell[]): JetEvidence[] {
  const reference = jetArea(machine.marking, machine.carburettors[0]!.main);
  return cells.map(({ id, air, main }) => ({
    id,
    group: 'chart',
    shift: machineAirShift(machine, air),
    logArea: Math.log(jetArea(machine.marking, main) / reference),
    sd: logSizeStep(machine, main) * Math.sqrt(ROUNDING_VARIANCE + CHART_AUTHOR_SD ** 2),
  }));
}

/**
 * A run log as evidence: the right jet is the fitted one less the sizes it was found rich by. Of several cylinders it is
 * the mean over those that were looked at, and no surer than the least sure of them: one eye read all the plugs.
 */
export function evidenceOfLog(
  machine: Machine,
  entries: readonly LogEntry[],
  group: 'log' | 'log-before' = 'log',
): JetEvidence[] {
  return entries.map((entry) => {
    const step = logSizeStep(machine, entry.setting.mains[0]!);
    const delivered = logDelivered(machine, entry.setting);
    const found = eachCylinder(entry, delivered.length);
    const looked = delivered.flatMap((log, i) => {
      const cylinder = found[i] ?? null;
      if (cylinder === null) return [];
      return [{ right: log - sizesRich(cylinder) * step, sd: verdictSd(cylinder, entry.judgedBy) * step }];
    });
    return {
      id: entry.id,
      group,
      shift: machineAirShift(machine, entry.air),
      logArea: looked.reduce((sum, { right }) => sum + right, 0) / looked.length,
      sd: Math.max(...looked.map(({ sd }) => sd)),
    };
  });
}

function sizesRich({ verdict, sizes }: LookedAt): number {
  if (verdict === 'right') return 0;
  return (verdict === 'rich' ? 1 : -1) * (sizes ?? SIDE_ONLY.sizes);
}

/** Sd of a verdict in sizes: the judge's own, and that verdicts come in whole sizes, at finest in halves. */
function verdictSd({ verdict, sizes }: LookedAt, judgedBy: JudgedBy | null): number {
  const judge = judgedBy === null ? UNKNOWN_JUDGE_SD : VERDICT_SD[judgedBy];
  const sideOnly = verdict !== 'right' && sizes === null ? SIDE_ONLY.sd : 0;
  const grain = verdict === 'right' || Number.isInteger(sizes ?? SIDE_ONLY.sizes) ? 1 : 0.5;
  return Math.sqrt(judge ** 2 + sideOnly ** 2 + ROUNDING_VARIANCE * grain ** 2);
}
