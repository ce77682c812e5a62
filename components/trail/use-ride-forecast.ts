'use client';

import { useMemo } from 'react';
import useSWR from 'swr';
import { askFor } from '@/components/server/ask-for';
import { forecastSchema } from '@/lib/contract/forecast';
import { forecastSeries } from '@/lib/contract/forecast-series';
import { readCoordinate } from '@/lib/fields/coordinate';
import type { RideDraft } from '@/lib/fields/trail/trail-rows';
import type { HourSeries } from '@/lib/hours/series';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import type { Ride } from '@/lib/trail/ride';

export type RideForecast = {
  readonly series: HourSeries | null;
  readonly asking: boolean;
  /** Why there is none, in words; null where nothing was asked or it came. */
  readonly problem: string | null;
  readonly credit: { readonly text: string; readonly url: string | null } | null;
};

const NOTHING: RideForecast = { series: null, asking: false, problem: null, credit: null };

async function ask(path: string) {
  const answer = await askFor({
    path,
    reader: forecastSchema,
    instead: 'Type the hours of the ride yourself.',
  });
  if (answer.ok) return answer.value;
  throw new Error(answer.reason);
}

/** The forecast at the ride's first place, from an hour before to an hour after it. */
export function useRideForecast(draft: RideDraft, ride: Ride | null): RideForecast {
  const latitude = readCoordinate(draft.latitude, 'latitude');
  const longitude = readCoordinate(draft.longitude, 'longitude');
  const wanted = draft.air === 'forecast' && ride !== null && latitude !== null && longitude !== null;
  const path = wanted ? pathOf(ride, latitude, longitude) : null;
  const { data, error, isLoading } = useSWR(path, ask, {
    revalidateOnFocus: false,
    shouldRetryOnError: false,
    dedupingInterval: 60_000,
  });
  return useMemo(() => {
    if (draft.air !== 'forecast') return NOTHING;
    if (latitude === null || longitude === null)
      return {
        ...NOTHING,
        problem: 'Type the latitude and longitude of the start, or read them from a track.',
      };
    if (error instanceof Error) return { ...NOTHING, problem: error.message };
    if (data === undefined) return { ...NOTHING, asking: isLoading };
    const { attribution, attributionUrl } = data;
    return { ...NOTHING, series: forecastSeries(data), credit: { text: attribution, url: attributionUrl } };
  }, [draft.air, latitude, longitude, data, error, isLoading]);
}

function pathOf(ride: Ride, latitude: number, longitude: number): string {
  const [first, last] = [ride.stops[0], ride.stops.at(-1)];
  const from = instant(Math.floor((first?.arrive ?? 0) / HOUR_MS) * HOUR_MS);
  const hours = Math.ceil(((last?.leave ?? from) - from) / HOUR_MS) + 2;
  const query = new URLSearchParams({
    lat: latitude.toFixed(4),
    lon: longitude.toFixed(4),
    elevation: String(Math.round(first?.elevation ?? 0)),
    from: isoUtc(from),
    hours: String(Math.max(1, hours)),
  });
  return `/api/forecast?${query}`;
}
