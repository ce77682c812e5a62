import type { Setting } from '@/lib/carb/machine';
import { sameSetting } from '@/lib/carb/same-setting';
import type { Plan, RunPlan } from '@/lib/plan/types';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { actMoment } from './acts';
import type { PlannedRacer } from './racer';

/** From when a setting is in the engine. */
type Fitted = { readonly from: Instant; readonly setting: Setting };

/**
 * How a racer stands in an hour: `lean`, a run whose chance of lean is over the accepted one; `drowned`, one so rich that
 * it may not run; `rich`, one that is too rich more often than not; `right`; `made`, nothing but runs that are over; `none`, no run; `unknown`, a run the
 * hours do not reach.
 */
export type HourState = 'lean' | 'drowned' | 'rich' | 'right' | 'made' | 'none' | 'unknown';

export type BriefingCell = {
  readonly hour: Instant;
  /** What is in the engine as the hour starts, then what each act of the hour puts in; empty where the hours reach no run. */
  readonly settings: readonly Setting[];
  readonly state: HourState;
  /** Sorted runs of the plan that lie in the hour, or reach into it. */
  readonly runs: readonly number[];
  /** Of the leanest run of the hour; null where nothing is planned in it. */
  readonly leanCount: RunPlan['leanCount'] | null;
};

export type BriefingRow = { readonly racerId: string; readonly cells: readonly BriefingCell[] };

/** The hours of `ticks` in which anybody runs or has something to do. */
export function briefingHours(
  planned: readonly PlannedRacer[],
  ticks: readonly Instant[],
): readonly Instant[] {
  return ticks.filter((hour) =>
    planned.some(
      ({ plan }) => runsIn(plan, hour).length > 0 || plan.swaps.some((swap) => isIn(hour, actMoment(swap))),
    ),
  );
}

/** From the first to the last moment of anybody's runs and acts; null where there are none. */
export function briefingSpan(
  planned: readonly PlannedRacer[],
): { readonly from: Instant; readonly to: Instant } | null {
  const moments = planned.flatMap(({ plan }) => [
    ...plan.sortedRuns.flatMap(({ start, end }) => [start, end]),
    ...plan.swaps.map(actMoment),
  ]);
  if (moments.length === 0) return null;
  return moments.reduce((span, at) => ({ from: earlier(span.from, at), to: later(span.to, at) }), {
    from: moments[0]!,
    to: moments[0]!,
  });
}

const earlier = (a: Instant, b: Instant): Instant => (b < a ? b : a);
const later = (a: Instant, b: Instant): Instant => (b > a ? b : a);

/** One row for a racer, one cell for every hour. */
export function briefingRow({ racer, plan }: PlannedRacer, hours: readonly Instant[]): BriefingRow {
  const engine = engineOf(plan);
  return {
    racerId: racer.id,
    cells: hours.map((hour) => {
      const runs = runsIn(plan, hour);
      const planned = runs.filter(({ state }) => state === 'planned');
      const leanest = [...planned].sort((a, b) => b.chanceOfLean - a.chanceOfLean)[0];
      return {
        hour,
        settings: settingsIn(engine, hour),
        state: hourState(runs),
        runs: runs.map(({ run }) => run),
        leanCount: leanest?.leanCount ?? null,
      };
    }),
  };
}

function hourState(runs: readonly RunPlan[]): HourState {
  const planned = runs.filter(({ state }) => state === 'planned');
  if (planned.some(({ grade }) => grade === 'lean')) return 'lean';
  if (planned.some(({ grade }) => grade === 'drowned')) return 'drowned';
  if (runs.some(({ state }) => state === 'beyond-hours')) return 'unknown';
  if (planned.some(({ grade }) => grade === 'rich')) return 'rich';
  if (planned.length > 0) return 'right';
  return runs.length > 0 ? 'made' : 'none';
}

const isIn = (hour: Instant, at: Instant): boolean => at >= hour && at < hour + HOUR_MS;

/** Runs with a moment inside the hour; one that ends as the hour starts is not in it. */
function runsIn(plan: Plan, hour: Instant): readonly RunPlan[] {
  return plan.runs.filter(({ run, state }) => {
    if (state === 'out') return false;
    const { start, end } = plan.sortedRuns[run]!;
    return start < hour + HOUR_MS && (end > hour || start === hour);
  });
}

/** A moment before any night. */
const FROM_THE_FIRST = instant(0);

/** What is in the engine over the night, in order of time; a change of setting starts with its act. */
function engineOf(plan: Plan): readonly Fitted[] {
  const known = plan.runs.filter(({ state }) => state !== 'beyond-hours' && state !== 'out');
  const actOf = new Map(plan.swaps.map((swap) => [swap.beforeRun, swap]));
  const first = known[0];
  if (first === undefined) return [];
  return [
    { from: FROM_THE_FIRST, setting: actOf.get(first.run)?.from ?? first.setting },
    ...known.map(({ run, setting }) => {
      const act = actOf.get(run);
      return { from: act === undefined ? plan.sortedRuns[run]!.start : actMoment(act), setting };
    }),
  ];
}

function settingsIn(engine: readonly Fitted[], hour: Instant): readonly Setting[] {
  const before = engine.findLast(({ from }) => from <= hour);
  const during = engine.filter(({ from }) => from > hour && from < hour + HOUR_MS);
  const all = [...(before === undefined ? [] : [before]), ...during].map(({ setting }) => setting);
  return all.filter((setting, i) => i === 0 || !sameSetting(setting, all[i - 1]!));
}
