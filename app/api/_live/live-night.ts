import { fieldsProblem, type Problem } from '@/app/api/_http/problem';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { fail, ok, type Result } from '@/lib/result/result';
import type { CalendarContext } from '@/lib/share/calendar-act';
import { type LivePlan, livePlans } from '@/lib/share/live-plans';
import type { SharedNight } from '@/lib/share/shared-night';
import type { Instant } from '@/lib/time/instant';
import { type FetchForecast, liveHours } from './live-hours';
import { readLiveQuery } from './live-query';

/** What a live answer needs of the world. */
export type LiveDeps = {
  readonly fetchForecast: FetchForecast;
  readonly now: () => Instant;
  /** Plans elsewhere, or says why not now; in place where it is left out. */
  readonly plan?: (
    ...night: Parameters<typeof livePlans>
  ) => Promise<Result<ReturnType<typeof livePlans>, Problem>>;
};

export type PolledNight = {
  readonly night: SharedNight;
  readonly machines: readonly LivePlan[];
  readonly context: CalendarContext;
  readonly fresh: boolean;
};

/** The night an address carries, planned with the newest hours there are. */
export async function liveNight(search: string, deps: LiveDeps): Promise<Result<PolledNight, Problem>> {
  const query = readLiveQuery(search);
  if (!query.ok) return query;
  const { night, units } = query.value;
  const { event } = night;
  const clock = deps.now();
  const hours = await liveHours(night, { ...deps, clock });
  const given = { series: hours.series, clock };
  const planned = deps.plan === undefined ? ok(livePlans(night, given)) : await deps.plan(night, given);
  if (!planned.ok) return planned;
  const machines = planned.value;
  const voice = { zone: event.timezone, units, ride: event.ride };
  if (!machines.ok)
    return fail(fieldsProblem(machines.reason, { ...voice, runNames: event.runs.map(({ name }) => name) }));
  if (machines.value.every(({ standing, accepted }) => standing === null && accepted === null))
    return fail(nothingToGoBy(hours.fresh));
  const context = {
    clock,
    sharedAt: instantFromJson(night.sharedAt),
    swapMinutes: event.swapMinutes,
    voice,
    hours: hours.words,
  };
  return ok({ night, machines: machines.value, context, fresh: hours.fresh });
}

function nothingToGoBy(fresh: boolean): Problem {
  const missing = 'The night carries neither hours for its runs nor an accepted plan';
  return fresh
    ? {
        status: 422,
        detail: `${missing}, and names no place to get a forecast for. Add hours and share it again.`,
      }
    : {
        status: 503,
        detail: `${missing}, and no forecast is to be had now. Try again later.`,
        headers: { 'retry-after': '60' },
      };
}
