'use client';

import useSWR from 'swr';
import { useStoreReads } from '@/components/store/store-provider';
import { useQuietWrite } from '@/components/store/use-quiet-write';
import { followsForecast, stretchOfRuns } from '@/lib/night/forecast-question';
import type { Result } from '@/lib/result/result';
import type { EventRecord, Stored } from '@/lib/store/records';
import { HOUR_MS, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { type RenewProblem, renewForecast } from './renew-forecast';

/** As often as the server itself asks a service. */
const EVERY_MS = 15 * MINUTE_MS;
const AFTER_FAILURE_MS = 2 * MINUTE_MS;
const OVER_AFTER_MS = 2 * HOUR_MS;

export type ForecastState = {
  /** 'off': the night follows no forecast; 'over': its runs are past and nothing is asked any more. */
  readonly status: 'off' | 'over' | 'following';
  readonly asking: boolean;
  /** Why the last question had no answer; null where it had one. */
  readonly problem: RenewProblem | null;
  readonly askNow: () => void;
};

/**
 * Keeps the forecast of a night new while the page is open: at intervals, when the page is looked at again and when
 * the signal comes back. What is shown comes from the store, so it is there before any answer.
 */
export function useForecast(event: Stored<EventRecord>, now: Instant): ForecastState {
  const store = useStoreReads();
  const write = useQuietWrite();
  const status = statusOf(event.value, now);
  const { forecastId, event: night } = event.value;
  const key =
    store === null || status !== 'following' || forecastId === null
      ? null
      : ['forecast', event.id, forecastId, night.place?.latitude, night.place?.longitude, night.elevationM];
  const { data, isValidating, mutate } = useSWR<Result<'kept', RenewProblem>>(
    key,
    () =>
      // The key is null where either is.
      store === null || write === null || forecastId === null
        ? { ok: false, reason: { code: 'no-place' } }
        : renewForecast({ store, write, eventId: event.id, forecastId, now: instant(Date.now()) }),
    {
      refreshInterval: (last) => (last === undefined || last.ok ? EVERY_MS : pauseAfter(last.reason)),
      // A phone in a pocket may still have to say that the act changed.
      refreshWhenHidden: true,
      revalidateOnFocus: true,
      revalidateOnReconnect: true,
      focusThrottleInterval: MINUTE_MS,
      // A question that failed a second ago must not swallow the one the signal's return puts.
      dedupingInterval: 0,
    },
  );
  return {
    status,
    asking: isValidating,
    problem: data?.ok === false ? data.reason : null,
    askNow: () => void mutate(),
  };
}

function statusOf(record: EventRecord, now: Instant): ForecastState['status'] {
  if (!followsForecast(record)) return 'off';
  const runs = stretchOfRuns(record);
  return runs !== null && now > runs.end + OVER_AFTER_MS ? 'over' : 'following';
}

function pauseAfter(problem: RenewProblem): number {
  const asked = problem.code === 'refused' ? (problem.retryAfterSeconds ?? 0) * 1000 : 0;
  return Math.max(AFTER_FAILURE_MS, asked);
}
