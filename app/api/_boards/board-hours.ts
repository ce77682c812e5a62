import { allRuns } from '@/lib/board/expiry';
import type { BoardNight } from '@/lib/contract/board';
import type { ContractProblem } from '@/lib/contract/problem';
import type { HourSeries } from '@/lib/hours/series';
import { ok, type Result } from '@/lib/result/result';
import { joinedHours } from '@/lib/share/joined-hours';
import { sharedSeries } from '@/lib/share/night-requests';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { metre } from '@/lib/units/quantity';
import type { ForecastQuestion } from '@/lib/weather/get-forecast';
import type { BoardDeps } from './board-deps';

/** Hours before the first run, for readings taken while setting up, and after the last one. */
const HOURS_BEFORE = 6;
const HOURS_AFTER = 2;

type Given = {
  readonly deps: Pick<BoardDeps, 'fetchForecast' | 'now'>;
  readonly postedAt: Instant;
  /** The hours it was planned with last. */
  readonly before: HourSeries | null;
};

/** The newest hours there are for a board: what was typed, else a forecast, else those it was planned with last. */
export async function boardHours(
  night: BoardNight,
  { deps, postedAt, before }: Given,
): Promise<Result<HourSeries, readonly ContractProblem[]>> {
  const typed = night.hoursTyped && night.hours.length > 0;
  const { event, hours, readings } = night;
  const sharedAt = isoUtc(postedAt);
  const shared = sharedSeries({ event, hours, readings, machines: [], hoursTyped: typed, sharedAt });
  if (!shared.ok) return shared;
  const question = typed ? null : questionOf(night);
  const last = before !== null && before.hours.length > 0 ? before : shared.value;
  if (question === null) return ok(typed ? shared.value : last);
  const over = allRuns(night).every(({ end }) => end <= deps.now());
  const forecast = over ? null : await deps.fetchForecast(question);
  if (forecast === null || !forecast.ok) return ok(last);
  return ok(last.hours.length === 0 ? forecast.value : joinedHours(last, forecast.value));
}

function questionOf(night: BoardNight): ForecastQuestion | null {
  const { place, elevationM } = night.event;
  const times = allRuns(night).flatMap(({ start, end }) => [start, end]);
  if (place === undefined || times.length === 0) return null;
  const [first, last] = [Math.min(...times), Math.max(...times)];
  return {
    latitude: place.latitude,
    longitude: place.longitude,
    elevation: metre(elevationM),
    from: instant(first - HOURS_BEFORE * HOUR_MS),
    hours: Math.ceil((last - first) / HOUR_MS) + HOURS_BEFORE + HOURS_AFTER,
  };
}
