import { baselineSetting } from '@/lib/carb/baseline-setting';
import type { Machine, Setting } from '@/lib/carb/machine';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { ContractProblem } from '@/lib/contract/problem';
import type { HourSeries } from '@/lib/hours/series';
import type { PlaceOffset } from '@/lib/plan/place-offset';
import type { PlanProblem, PlanRequest } from '@/lib/plan/types';
import { fail, ok, type Result } from '@/lib/result/result';
import { eventOfRacer } from '@/lib/store/racer-event';
import type { EventRecord, ForecastRecord, LogRecord, Stored } from '@/lib/store/records';
import { HOUR_MS } from '@/lib/time/instant';
import { eventRequest } from './event-request';
import { hoursOfNight } from './hours-of-night';
import { type MachineAtEvent, machineRequest } from './machine-request';

/** What the store holds about one night and one machine. */
export type NightRecords = MachineAtEvent & {
  readonly forecast: ForecastRecord | null;
  /** What past nights at the place taught. Absent: nothing. */
  readonly placeOffset?: PlaceOffset;
};

/** A run of this long before the first one planned, or after the last, still belongs to the same night. */
const AROUND_THE_NIGHT_MS = 12 * HOUR_MS;

/** True where a machine's run of then, ISO 8601, is one of the event's night. */
export function isOfNight(event: EventRecord, machineId: string, at: string): boolean {
  const runs = eventOfRacer(event, machineId).runs;
  const first = Math.min(...runs.map(({ start }) => instantFromJson(start)));
  const last = Math.max(...runs.map(({ end }) => instantFromJson(end)));
  const then = Date.parse(at);
  return then >= first - AROUND_THE_NIGHT_MS && then <= last + AROUND_THE_NIGHT_MS;
}

/** The log's entries of one machine at one event; not those of before the event was given another date. */
export function logOf(
  log: readonly Stored<LogRecord>[],
  event: Pick<Stored<EventRecord>, 'id' | 'value'>,
  machineId: string,
): readonly LogRecord[] {
  return log
    .map(({ value }) => value)
    .filter((entry) => entry.eventId === event.id && entry.machineId === machineId)
    .filter(({ at }) => isOfNight(event.value, machineId, at));
}

/** A night that can be planned: the records in the core's own terms. */
export type Night = {
  readonly records: NightRecords;
  readonly zone: string;
  readonly machine: Machine;
  readonly series: HourSeries;
  /** What is in the engine as far as the app was told; the baseline where it was not. */
  readonly fitted: Setting;
  readonly request: Omit<PlanRequest, 'now'>;
};

/** Why there is no plan, by what has to be mended. */
export type NightProblem =
  | { readonly code: 'machine'; readonly problems: readonly ContractProblem[] }
  | { readonly code: 'hours'; readonly problems: readonly ContractProblem[] }
  | { readonly code: 'plan'; readonly problem: PlanProblem };

export function nightFrom(records: NightRecords): Result<Night, NightProblem> {
  const own = machineRequest(records);
  if (!own.ok) return fail({ code: 'machine', problems: own.reason });
  const { value: event } = records.event;
  const series = hoursOfNight(event, records.forecast);
  if (series === null) return fail({ code: 'plan', problem: { code: 'no-hours' } });
  if (!series.ok) return fail({ code: 'hours', problems: series.reason });
  const { machine, fitted } = own.value;
  return ok({
    records,
    zone: event.event.timezone,
    machine,
    series: series.value,
    fitted: fitted ?? baselineSetting(machine),
    request: { series: series.value, ...eventRequest(event, records.placeOffset), ...own.value },
  });
}
