import { instantFromJson } from '@/lib/contract/event-from-json';
import { planRequestsFromJson } from '@/lib/contract/plan-from-json';
import type { ContractProblem } from '@/lib/contract/problem';
import { seriesFromJson } from '@/lib/contract/series-from-json';
import type { Hour, HourSeries } from '@/lib/hours/series';
import type { PlanRequest } from '@/lib/plan/types';
import { ok, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { metre } from '@/lib/units/quantity';
import type { SharedNight } from './shared-night';

/** The hours that travel with a night, as a forecast made when it was shared; there may be none of them. */
export function sharedSeries(night: SharedNight): Result<HourSeries, readonly ContractProblem[]> {
  const source = {
    name: night.hoursTyped === true ? 'typed' : 'shared',
    attribution: '',
    attributionUrl: null,
    issuedAt: instantFromJson(night.sharedAt),
    fetchedAt: null,
    modelElevation: null,
  };
  const { hours, event } = night;
  if (hours.length === 0) return ok({ hours: [], elevation: metre(event.elevationM), source });
  const series = seriesFromJson(hours, event.elevationM);
  if (!series.ok) return series;
  const told =
    night.hoursTyped === true
      ? series.value.hours
      : series.value.hours.map((hour) => asForecast(hour, source.name));
  return ok({ ...series.value, hours: told, source });
}

/** Hours that nobody typed were a service's before they travelled. */
function asForecast(hour: Hour, by: string): Hour {
  return { ...hour, origin: 'forecast', temperatureBy: by, pressureBy: by };
}

/** A planning request for every machine of a shared night, or everything that keeps one from being made. */
export function nightRequests(
  { event, machines, readings, placeOffset, sharedAt }: SharedNight,
  { series, now }: { readonly series: HourSeries; readonly now: Instant },
): Result<readonly PlanRequest[], readonly ContractProblem[]> {
  const body = { event, machines, readings, placeOffset, options: {}, now: isoUtc(now) };
  const placed = planRequestsFromJson(body, { series, clock: now });
  return placed.ok ? ok(placed.value.map(({ request }) => toldWhenShared(request, sharedAt))) : placed;
}

/** What was in the engine was said when the night was shared, not now. */
function toldWhenShared(request: PlanRequest, sharedAt: string): PlanRequest {
  if (request.fitted === null) return request;
  return { ...request, fittings: [{ at: instantFromJson(sharedAt), setting: request.fitted }] };
}
