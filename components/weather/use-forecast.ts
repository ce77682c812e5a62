'use client';

import { useCallback, useEffect, useState } from 'react';
import useSWR from 'swr';
import { useStoreReads } from '@/components/store/store-provider';
import { useQuietWrite } from '@/components/store/use-quiet-write';
import { pauseBeforeAsking } from '@/lib/night/asking-again';
import { followsForecast, stretchOfRuns } from '@/lib/night/forecast-question';
import type { Result } from '@/lib/result/result';
import type { EventRecord, Stored } from '@/lib/store/records';
import { HOUR_MS, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import type { ForecastFault } from '@/lib/words/forecast-fault';
import { renewForecast } from './renew-forecast';

const OVER_AFTER_MS = 2 * HOUR_MS;

export type ForecastState = {
  /** 'off': the night follows no forecast; 'over': its runs are past and nothing is asked any more. */
  readonly status: 'off' | 'over' | 'following';
  readonly asking: boolean;
  /** Why the last question had no answer; null where it had one. */
  readonly problem: ForecastFault | null;
  /** From when on it may be asked by hand again, on the minute; null: at once. */
  readonly askFrom: Instant | null;
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
  const { pause, askFrom, count, startAnew } = usePause();
  const { data, isValidating, mutate } = useSWR<Renewed>(
    key,
    async () =>
      // The key is null where either is.
      store === null || write === null || forecastId === null
        ? { ok: false, reason: { code: 'no-place' } }
        : count(
            await renewForecast({ store, write, eventId: event.id, forecastId, now: instant(Date.now()) }),
          ),
    {
      refreshInterval: pause,
      // A phone in a pocket may still have to say that the act changed.
      refreshWhenHidden: true,
      revalidateOnFocus: true,
      // The signal's return is heard below.
      revalidateOnReconnect: false,
      focusThrottleInterval: MINUTE_MS,
      // A question that failed a second ago must not swallow the one the signal's return puts.
      dedupingInterval: 0,
    },
  );
  useEffect(() => {
    const askAtOnce = () => {
      startAnew();
      void mutate();
    };
    window.addEventListener('online', askAtOnce);
    return () => window.removeEventListener('online', askAtOnce);
  }, [startAnew, mutate]);
  return {
    status,
    asking: isValidating,
    problem: data?.ok === false ? data.reason : null,
    askFrom,
    askNow: () => void mutate(),
  };
}

function statusOf(record: EventRecord, now: Instant): ForecastState['status'] {
  if (!followsForecast(record)) return 'off';
  const runs = stretchOfRuns(record);
  return runs !== null && now > runs.end + OVER_AFTER_MS ? 'over' : 'following';
}

type Renewed = Result<'kept', ForecastFault>;

/**
 * How long to wait until the next question [ms]; `count` is told every answer. A number and no function: the wait begins
 * anew when it changes and with no other render, or a page drawn anew every half minute would never ask again.
 */
function usePause() {
  const [failures, setFailures] = useState(0);
  const [askedSeconds, setAskedSeconds] = useState(0);
  const [askFrom, setAskFrom] = useState<Instant | null>(null);
  const startAnew = useCallback(() => {
    setFailures(0);
    setAskFrom(null);
  }, []);
  const count = useCallback((answer: Renewed): Renewed => {
    const refused = !answer.ok && answer.reason.code === 'refused' ? answer.reason : null;
    setFailures((before) => (answer.ok ? 0 : before + 1));
    const seconds = refused?.retryAfterSeconds ?? 0;
    setAskedSeconds(seconds);
    setAskFrom(seconds === 0 ? null : wholeMinuteAfter(seconds));
    return answer;
  }, []);
  return { pause: pauseBeforeAsking(failures, askedSeconds), askFrom, count, startAnew };
}

/** A clock says no seconds. */
const wholeMinuteAfter = (seconds: number): Instant =>
  instant(Math.ceil((Date.now() + seconds * 1000) / MINUTE_MS) * MINUTE_MS);
