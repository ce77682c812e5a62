import type { Machine } from '@/lib/carb/machine';
import type { HourSeries } from '@/lib/hours/series';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import type { PlanOptions, PlanProblem, PlanRequest, Run } from '@/lib/plan/types';
import { fail, ok, type Result } from '@/lib/result/result';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { ratio } from '@/lib/units/quantity';
import type { EventJson } from './event';
import { instantFromJson, readingFromJson, runsFromEvent } from './event-from-json';
import { machineFromJson } from './machine-from-json';
import { placeOffsetFromJson } from './place-offset';
import { entriesOf, type PlacedEntry, type PlanEntryJson, type PlanRequestJson } from './plan-request';
import type { ContractProblem, Path } from './problem';
import { settingOf, settingProblems } from './setting-problems';

/** What all engines of one event share. */
type SharedInputs = Omit<PlanRequest, 'machine' | 'fitted' | 'made' | 'accepted'>;

/** Longest event: weeks of touring fit, a slip in the year does not. */
const MOST_EVENT_DAYS = 31;
const MOST_HOURS_DAYS = 62;
const DAY_MS = 24 * HOUR_MS;

/** One engine's request with where it sits in what was sent. */
export type PlacedRequest = { readonly request: PlanRequest; readonly path: Path };

/**
 * The planning requests of a body, one for each engine, or everything that keeps them from being made.
 *
 * @param series the hours at the site, from the body or from a forecast
 * @param clock the real moment, used where the body names none
 */
export function planRequestsFromJson(
  body: PlanRequestJson,
  given: { readonly series: HourSeries; readonly clock: Instant },
): Result<readonly PlacedRequest[], readonly ContractProblem[]> {
  const runs = runsFromEvent(body.event);
  const spans = spanProblems(runs, given.series);
  if (spans.length > 0) return fail(spans);
  const placeOffset =
    body.placeOffset === undefined ? null : placeOffsetFromJson(body.placeOffset, body.event);
  const shared: SharedInputs = {
    runs,
    series: given.series,
    readings: body.readings.map(readingFromJson),
    ...(placeOffset === null ? {} : { placeOffset }),
    now: nowFromJson(body.now, runs, given.clock),
    options: optionsFromJson(body.options, body.event),
  };
  const read = entriesOf(body).map((placed) => ({ placed, request: planRequestFromJson(placed, shared) }));
  const problems = read.flatMap(({ request }) => (request.ok ? [] : request.reason));
  if (problems.length > 0) return fail(problems);
  return ok(
    read.flatMap(({ placed, request }) =>
      request.ok ? [{ request: request.value, path: placed.path }] : [],
    ),
  );
}

function spanProblems(runs: readonly Run[], series: HourSeries): readonly ContractProblem[] {
  const eventDays = daysOf(runs.flatMap(({ start, end }) => [start, end]));
  const hoursDays = daysOf(series.hours.map(({ at }) => at));
  const problems: ContractProblem[] = [];
  if (eventDays > MOST_EVENT_DAYS)
    problems.push({
      path: ['event', 'runs'],
      reason: { code: 'event-too-long', days: eventDays, limit: MOST_EVENT_DAYS },
    });
  if (hoursDays > MOST_HOURS_DAYS)
    problems.push({
      path: ['hours'],
      reason: { code: 'hours-too-far-apart', days: hoursDays, limit: MOST_HOURS_DAYS },
    });
  return problems;
}

function daysOf(times: readonly Instant[]): number {
  return times.length === 0 ? 0 : (Math.max(...times) - Math.min(...times)) / DAY_MS;
}

function optionsFromJson(json: PlanRequestJson['options'], event: EventJson): PlanOptions {
  return {
    scenarios: json.scenarios ?? DEFAULT_OPTIONS.scenarios,
    seed: json.seed ?? DEFAULT_OPTIONS.seed,
    worthIt: json.worthItPercent === undefined ? null : ratio(json.worthItPercent / 100),
    swapMinutes: event.swapMinutes,
    oneSetting: event.ride,
  };
}

/** The moment of planning: as sent, else the clock; a night that has begun is planned from before its first run. */
function nowFromJson(json: PlanRequestJson['now'], runs: readonly Run[], clock: Instant): Instant {
  return json === undefined
    ? instant(Math.min(clock, ...runs.map((run) => run.start)))
    : instantFromJson(json);
}

/** One engine's planning request, or everything that keeps it from being one. */
function planRequestFromJson(
  { entry, path }: PlacedEntry,
  shared: SharedInputs,
): Result<PlanRequest, readonly ContractProblem[]> {
  const read = machineFromJson(entry.machine, [...path, 'machine']);
  if (!read.ok) return read;
  const machine = read.value;
  const problems = entryProblems(entry, { machine, runs: shared.runs.length, path });
  if (problems.length > 0) return fail(problems);
  return ok({
    machine,
    ...shared,
    fitted: entry.fitted === undefined ? null : settingOf(entry.fitted, machine),
    accepted: entry.accepted?.map((setting) => settingOf(setting, machine)) ?? null,
    ...(entry.outFrom === undefined ? {} : { outFrom: instantFromJson(entry.outFrom) }),
    made: entry.made?.map(({ run, setting }) => ({ run, setting: settingOf(setting, machine) })) ?? [],
  });
}

type EntryContext = { readonly machine: Machine; readonly runs: number; readonly path: Path };

function entryProblems(
  entry: PlanEntryJson,
  { machine, runs, path }: EntryContext,
): readonly ContractProblem[] {
  const { fitted, accepted, made } = entry;
  const settings = [
    ...(fitted === undefined ? [] : [{ setting: fitted, at: [...path, 'fitted'] }]),
    ...(accepted ?? []).map((setting, i) => ({ setting, at: [...path, 'accepted', i] })),
    ...(made ?? []).map(({ setting }, i) => ({ setting, at: [...path, 'made', i, 'setting'] })),
  ];
  return [
    ...settings.flatMap(({ setting, at }) => settingProblems(setting, machine, at)),
    ...acceptedProblems(accepted, runs, [...path, 'accepted']),
    ...madeProblems(made ?? [], runs, [...path, 'made']),
  ];
}

function acceptedProblems(
  accepted: PlanEntryJson['accepted'],
  runs: number,
  path: Path,
): readonly ContractProblem[] {
  if (accepted === undefined || accepted.length === runs) return [];
  return [{ path, reason: { code: 'settings-do-not-match-runs', settings: accepted.length, runs } }];
}

function madeProblems(
  made: NonNullable<PlanEntryJson['made']>,
  runs: number,
  path: Path,
): readonly ContractProblem[] {
  return made.flatMap(({ run }, i): readonly ContractProblem[] => {
    const at = [...path, i, 'run'];
    if (run >= runs) return [{ path: at, reason: { code: 'no-such-run', run, runs } }];
    if (made.findIndex((other) => other.run === run) < i)
      return [{ path: at, reason: { code: 'run-made-twice', run } }];
    return [];
  });
}

/** Where in a request the reason for having no plan sits. */
export function planProblemPath(problem: PlanProblem, path: Path): Path {
  switch (problem.code) {
    case 'no-runs':
    case 'too-many-runs':
      return ['event', 'runs'];
    case 'run-ends-before-it-starts':
      return ['event', 'runs', problem.run, 'end'];
    case 'no-hours':
    case 'hours-do-not-cover-any-run':
      return ['hours'];
    case 'empty-box':
    case 'too-few-jets':
      return [...path, 'machine', 'box'];
    case 'setting-does-not-fit':
      return [...path, 'fitted'];
    case 'too-much-at-once':
      return problem.machines > 1 ? ['machines'] : [...path, 'machine'];
  }
}
