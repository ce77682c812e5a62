import type { Setting } from '@/lib/carb/machine';
import { makePlan } from '@/lib/plan/make-plan';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import type { Plan, PlanHour, PlanProblem, PlanRequest, Run, RunPlan } from '@/lib/plan/types';
import { fail, ok, type Result } from '@/lib/result/result';
import { addMinutes, type Instant, instant } from '@/lib/time/instant';
import { kelvinDifference } from '@/lib/units/quantity';
import type { Comparison, LoggedRun, NightReview, NightToReview, PlannedRun, RunReview } from './review';
import { reviewForecast } from './review-forecast';
import { type Counted, tallyOf, tallyOfPlan } from './tally';

/** When the first run of a night starts; null where it has none. */
export function startOfNight(runs: readonly Run[]): Instant | null {
  return runs.length === 0 ? null : instant(Math.min(...runs.map(({ start }) => start)));
}

/** When the last run of a night ends; null where it has none. */
export function endOfNight(runs: readonly Run[]): Instant | null {
  return runs.length === 0 ? null : instant(Math.max(...runs.map(({ end }) => end)));
}

/** One finished night: forecast, readings and plan against what happened, as far as anybody noted it. */
export function reviewNight(given: NightToReview): Result<NightReview, PlanProblem> {
  const { log } = given;
  const now = endOfNight(given.request.runs);
  if (now === null) return fail({ code: 'no-runs' });
  const request = { ...given.request, now };
  const plan = makePlan(request);
  if (!plan.ok) return plan;
  const counted = plan.value.sortedRuns.map((run, i) => isCounted(plan.value, run, i));
  const runs = plan.value.runs.map((run) => reviewRun(run, plan.value, { given, counted }));
  const forecast = reviewForecast(request, plan.value);
  const known = {
    readings: forecast.code === 'read' ? forecast.count : 0,
    verdicts: log.filter(({ verdict }) => verdict !== null).length,
  };
  const judgeable = known.readings + known.verdicts > 0 && counted.includes(true);
  if (!judgeable) return ok({ forecast, runs, compared: null, known });
  const compared = compare({ ...given, request }, plan.value, { counted, runs });
  return compared.ok ? ok({ forecast, runs, compared: compared.value, known }) : compared;
}

/** The hours reach it and the machine was in it. */
function isCounted(plan: Plan, { start, end }: Run, run: number): boolean {
  const first = plan.hours[0]?.at ?? plan.hoursEnd;
  return plan.runs[run]?.state !== 'out' && start >= first && end <= plan.hoursEnd;
}

type Review = { readonly given: NightToReview; readonly counted: Counted };

function reviewRun(run: RunPlan, plan: Plan, { given, counted }: Review): RunReview {
  const { name, start, end } = plan.sortedRuns[run.run]!;
  const reached = counted[run.run] === true;
  const { grade, leanCount, leanest, richest } = run;
  return {
    name,
    start,
    end,
    planned: given.planned[plan.order[run.run] ?? run.run] ?? null,
    made: run.state === 'out' ? null : { setting: run.setting, told: run.state === 'made' },
    air: reached
      ? { temperature: run.air.temperature, sd: kelvinDifference(sdAt(plan.hours, (start + end) / 2)) }
      : null,
    stood: reached ? { grade, leanCount, leanest, richest } : null,
    log: logOf(given.log, { name, start }),
  };
}

/** What is left of the error in the hour nearest to a moment. */
function sdAt(hours: readonly PlanHour[], at: number): number {
  const nearest = hours.reduce<PlanHour | null>(
    (best, hour) => (best === null || Math.abs(hour.at - at) < Math.abs(best.at - at) ? hour : best),
    null,
  );
  return nearest?.temperatureSd ?? 0;
}

/** The log's entry of a run: by its start, or by its name where the clock of one was put right. */
function logOf(log: readonly LoggedRun[], { name, start }: Pick<Run, 'name' | 'start'>): LoggedRun | null {
  return log.find(({ at }) => at === start) ?? log.find(({ run }) => run === name) ?? null;
}

type Compared = { readonly counted: Counted; readonly runs: readonly RunReview[] };

function compare(
  { request, planned }: NightToReview,
  plan: Plan,
  { counted, runs }: Compared,
): Result<Comparison, PlanProblem> {
  const perfect = perfectSettings(request);
  if (!perfect.ok) return perfect;
  const best = tallyOf(request, perfect.value, counted);
  if (!best.ok) return best;
  const accepted = plannedSettings(planned, plan, counted);
  const asPlanned = accepted === null ? null : tallyOf(request, accepted, counted);
  if (asPlanned !== null && !asPlanned.ok) return asPlanned;
  const told = runs.filter(({ made }, i) => counted[i] === true && made?.told === true).length;
  return ok({
    made: told === 0 && request.fitted === null ? null : tallyOfPlan(plan, counted),
    planned: asPlanned?.value ?? null,
    perfect: best.value,
    untold: counted.filter(Boolean).length - told,
  });
}

/** An hour is time to fit anything. */
const MINUTES_BEFORE = 60;

/** The plan of somebody who knew before the first run all that is known now. */
function perfectSettings(request: PlanRequest): Result<readonly Setting[], PlanProblem> {
  const first = startOfNight(request.runs) ?? request.now;
  const now = addMinutes(first, -Math.max(MINUTES_BEFORE, request.options.swapMinutes));
  const fitted = request.fittings?.findLast(({ at }) => at <= first)?.setting ?? null;
  const plan = makePlan({ ...request, now, fitted, fittings: [], made: [], accepted: null });
  return plan.ok ? ok(settingsAsGiven(plan.value)) : plan;
}

/** By the request's runs; null where a run that counts had no plan. What does not count stands on any setting. */
function plannedSettings(
  planned: readonly (PlannedRun | null)[],
  plan: Plan,
  counted: Counted,
): readonly Setting[] | null {
  const missing = plan.order.some((given, i) => counted[i] === true && (planned[given] ?? null) === null);
  return missing ? null : settingsAsGiven(plan).map((setting, i) => planned[i]?.setting ?? setting);
}
