import type { BoardEntry, BoardNight } from '@/lib/contract/board';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { planRequestsFromJson } from '@/lib/contract/plan-from-json';
import type { ContractProblem } from '@/lib/contract/problem';
import { settingOf, settingProblems } from '@/lib/contract/setting-problems';
import type { HourSeries } from '@/lib/hours/series';
import type { PlanRequest } from '@/lib/plan/types';
import type { Result } from '@/lib/result/result';
import { fail, ok } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';

type Given = { readonly series: HourSeries; readonly now: Instant };

/** A planning request for every machine of a board, in its order, or all that keeps one from being made. */
export function boardRequests(
  night: BoardNight,
  { series, now }: Given,
): Result<readonly PlanRequest[], readonly ContractProblem[]> {
  // The planner tells a night by its lists, so machines that run together have to be given the same ones.
  const shared = new Map<string, Pick<PlanRequest, 'runs' | 'readings' | 'options'>>();
  const problems: ContractProblem[] = [];
  const requests = night.machines.flatMap((entry, i) => {
    const event = entry.runs === undefined ? night.event : { ...night.event, runs: entry.runs };
    const { machine, accepted, made, outFrom, fittings } = entry;
    const body = {
      event,
      machines: [{ machine, accepted, made, outFrom, fitted: fittings.at(-1)?.setting }],
      readings: night.readings,
      placeOffset: night.placeOffset,
      options: {},
      now: isoUtc(now),
    };
    const placed = planRequestsFromJson(body, { series, clock: now });
    if (!placed.ok) {
      problems.push(...placed.reason.map((problem) => withPlace(problem, i)));
      return [];
    }
    const request = placed.value[0]!.request;
    const bad = fittings.flatMap(({ setting }, at) =>
      settingProblems(setting, request.machine, ['machines', i, 'fittings', at, 'setting']),
    );
    problems.push(...bad);
    const key = JSON.stringify(event.runs);
    const same = shared.get(key) ?? request;
    shared.set(key, same);
    const told = entry.fittings
      .map(({ at, setting }) => ({ at: instantFromJson(at), setting: settingOf(setting, request.machine) }))
      .sort((a, b) => a.at - b.at);
    const { runs, readings, options } = same;
    return [{ ...request, runs, readings, options, fitted: told.at(-1)?.setting ?? null, fittings: told }];
  });
  return problems.length > 0 ? fail(problems) : ok(requests);
}

/** Planned one by one, each problem names the first machine; on the board it is machine `i`. */
function withPlace({ path, reason }: ContractProblem, i: number): ContractProblem {
  return path[0] === 'machines' ? { path: ['machines', i, ...path.slice(2)], reason } : { path, reason };
}

export function entryName({ name, machine }: BoardEntry): string {
  return name ?? machine.name;
}

/** What programs call the machine at place `i` of the list. */
export function entryId({ id }: BoardEntry, i: number): string {
  return id ?? String(i + 1);
}
