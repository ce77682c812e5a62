import type { Plan, PlanHour, Run, RunPlan } from '@/lib/plan/types';
import { toCell } from '@/lib/table/cell';
import { writeTable } from '@/lib/table/write-table';
import { HOUR_MS, type Instant } from '@/lib/time/instant';
import { isoUtc, localClock, localDate } from '@/lib/time/zone';
import { temperatureIn } from '@/lib/units/choice';
import { plainNumber } from '@/lib/units/format';
import { givenWords } from '@/lib/words/given-air';
import { GRADE_WORD, RUN_STATE_WORD } from '@/lib/words/grades';
import { actText } from '@/lib/words/settings';
import type { Voice } from '@/lib/words/voice';

export type PlannedMachine = { readonly name: string; readonly plan: Plan };

/** A table stands still, so it says how old its forecast was when it was written. */
type NowVoice = Voice & { readonly now: Instant };

type Row = Readonly<Record<string, string | number>>;

/** Runs of which nothing is known have no numbers. */
const UNKNOWN = '';

/**
 * The runs of every machine as comma-separated values (RFC 4180: lines end in CR LF, quotes are doubled). Clock times
 * are those of the event's zone. A name that a spreadsheet would take for a formula gets an apostrophe before it.
 */
export function planCsv(machines: readonly PlannedMachine[], voice: NowVoice): string {
  const carburettors = Math.max(
    ...machines.flatMap(({ plan }) => plan.runs.map(({ setting }) => setting.mains.length)),
  );
  const rows = machines.flatMap(({ name, plan }) =>
    plan.runs.map((run) => rowOf({ name, plan }, run, { voice, carburettors })),
  );
  return writeTable(Object.keys(rows[0] ?? {}), rows.map(Object.values));
}

type RowContext = { readonly voice: NowVoice; readonly carburettors: number };

function rowOf({ name, plan }: PlannedMachine, run: RunPlan, { voice, carburettors }: RowContext): Row {
  const { zone, units, now } = voice;
  const timed = plan.sortedRuns[run.run]!;
  const swap = plan.swaps.find(({ beforeRun }) => beforeRun === run.run);
  const hour = hourOf(plan, timed);
  const madeAt = hour?.from.madeAt ?? null;
  const known = run.state !== 'beyond-hours' && run.state !== 'out';
  const when = (at: typeof timed.start) => `${localDate(at, zone)} ${localClock(at, zone)}`;
  const number = (value: number, digits: number) => (known ? plainNumber(value, digits) : UNKNOWN);
  const jets = Array.from({ length: carburettors }, (_, i) => [
    `jet ${i + 1}`,
    run.setting.mains[i] ?? UNKNOWN,
  ]);
  return {
    machine: toCell(name),
    run: toCell(timed.name),
    start: when(timed.start),
    end: when(timed.end),
    'start (UTC)': isoUtc(timed.start),
    ...Object.fromEntries(jets),
    trim: run.setting.trim ?? UNKNOWN,
    job: swap === undefined ? '' : actText(swap.from, swap.to),
    'job from': swap === undefined ? '' : when(swap.windowStart),
    'job by': swap === undefined ? '' : when(swap.latestStart),
    [`temperature (${units.temperature})`]: number(temperatureIn(run.air.temperature, units.temperature), 1),
    [`temperature before readings (${units.temperature})`]: number(
      temperatureIn(run.givenTemperature, units.temperature),
      1,
    ),
    source: known && hour !== undefined ? givenWords(hour, units).from : UNKNOWN,
    'age (h)': madeAt === null ? UNKNOWN : number(Math.max(0, now - madeAt) / HOUR_MS, 1),
    'leanest (%)': number(run.leanest * 100, 1),
    'richest (%)': number(run.richest * 100, 1),
    'lean in': number(run.leanCount.lean, 0),
    'of forecasts': number(run.leanCount.of, 0),
    'power (%)': number(run.relativePower * 100, 1),
    grade: known ? GRADE_WORD[run.grade] : UNKNOWN,
    state: RUN_STATE_WORD[run.state],
  };
}

/** The hour that speaks for a run: the last before its middle. */
function hourOf({ hours }: Plan, { start, end }: Run): PlanHour | undefined {
  return hours.findLast(({ at }) => at <= (start + end) / 2) ?? hours[0];
}
