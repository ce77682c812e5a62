import {
  type ChartCell,
  evidenceOfChart,
  evidenceOfLog,
  type JetEvidence,
  type LogEntry,
} from '@/lib/carb/jet-evidence';
import type { Machine } from '@/lib/carb/machine';
import { airFromJson } from '@/lib/contract/air-from-json';
import { settingProblems } from '@/lib/contract/setting-problems';
import type { LogRecord, MachineRecord, Stored } from './records';

/** Why a log entry teaches nothing. */
export type Uncounted = 'no-verdict' | 'jets-do-not-fit' | 'air-unclear' | 'older-hardware';

export type Evidence = {
  readonly observations: readonly JetEvidence[];
  readonly leftOut: readonly { readonly id: string; readonly why: Uncounted }[];
};

/**
 * Humidity of the air a chart was made for, which none states: the middle. At freezing it does not count; at 30 °C,
 * 50 points either way are 2 % of the air. Judgement, no source.
 */
const CHART_RELATIVE_HUMIDITY = 0.5;

/** Cells of a chart by their place, so that each can be named. */
export function chartCellId(index: number): string {
  return `chart-${index}`;
}

/**
 * All that speaks about a machine's response: its chart, and the verdicts of its runs. Runs of before the last change
 * of hardware count for how the engine moves with the air, not for its level; still older ones do not count.
 */
export function evidenceOf(
  record: MachineRecord,
  machine: Machine,
  log: readonly Stored<LogRecord>[],
): Evidence {
  const changes = [...new Set(record.hardware.map(({ on }) => on))].sort();
  const [before, last] = [changes.at(-2), changes.at(-1)];
  const read = log.map((entry) => readEntry(entry, machine, before));
  const entries = read.flatMap((entry) => ('entry' in entry ? [entry] : []));
  const isNow = ({ date }: { readonly date: string }): boolean => last === undefined || date >= last;
  const now = entries.filter(isNow).map(({ entry }) => entry);
  const earlier = entries.filter((entry) => !isNow(entry)).map(({ entry }) => entry);
  return {
    observations: [
      ...evidenceOfChart(machine, chartCells(record)),
      ...evidenceOfLog(machine, now),
      ...evidenceOfLog(machine, earlier, 'log-before'),
    ],
    leftOut: read.flatMap((entry) => ('why' in entry ? [entry] : [])),
  };
}

function chartCells({ chart }: MachineRecord): readonly ChartCell[] {
  return chart.flatMap(({ main, temperatureC, elevationM }, i) => {
    const air = airFromJson({ temperatureC, elevationM, relativeHumidity: CHART_RELATIVE_HUMIDITY });
    return air.ok ? [{ id: chartCellId(i), air: air.value, main }] : [];
  });
}

type Read =
  | { readonly entry: LogEntry; readonly date: string }
  | { readonly id: string; readonly why: Uncounted };

function readEntry({ id, value }: Stored<LogRecord>, machine: Machine, oldest: string | undefined): Read {
  // The local date of the run: the time is written with the offset of its place.
  const date = value.at.slice(0, 10);
  const { verdict, verdicts, sizes, judgedBy, setting } = value;
  if (verdict === null) return { id, why: 'no-verdict' };
  if (oldest !== undefined && date < oldest) return { id, why: 'older-hardware' };
  if (settingProblems(setting, machine, []).length > 0) return { id, why: 'jets-do-not-fit' };
  const air = airFromJson(value.air);
  if (!air.ok) return { id, why: 'air-unclear' };
  const each = verdicts === undefined ? {} : { verdicts };
  return { entry: { id, air: air.value, setting, verdict, ...each, sizes, judgedBy }, date };
}
