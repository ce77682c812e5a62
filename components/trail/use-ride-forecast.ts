'use client';

import { useMemo } from 'react';
import useSWR from 'swr';
import { askFor } from '@/components/server/ask-for';
import { forecastSchema } from '@/lib/contract/forecast';
import { forecastSeries } from '@/lib/contract/forecast-series';
import { readCoordinate } from '@/lib/fields/coordinate';
import type { RideDraft } from '@/lib/fields/trail/trail-rows';
import type { HourSeries } from '@/lib/hours/series';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { forecastReaches } from '@/lib/trail/forecast-reach';
import type { Ride } from '@/lib/trail/ride';
import type { Coordinates } from '@/lib/weather/place';
import { BEYOND_FORECAST } from '@/lib/words/past-ride';

export type AskedHours = {
  readonly series: HourSeries | null;
  readonly asking: boolean;
  /** Why there is none, in words; null where nothing was asked or it came. */
  readonly problem: string | null;
  /** What was taken of it, in words; null where that goes without saying. */
  readonly note: string | null;
  readonly credit: { readonly text: string; readonly url: string | null } | null;
};

export const NOTHING_ASKED: AskedHours = {
  series: null,
  asking: false,
  problem: null,
  note: null,
  credit: null,
};

async function ask(path: string) {
  const answer = await askFor({
    path,
    reader: forecastSchema,
    instead: 'Type the hours of the ride yourself.',
  });
  if (answer.ok) return answer.value;
  throw new Error(answer.reason);
}

/** Asked once, and not again because somebody looked away. */
export const ASK_ONCE = { revalidateOnFocus: false, shouldRetryOnError: false, dedupingInterval: 60_000 };

/** Where the ride starts; null where it is not told, with what is said then. */
export const NO_START = 'Type the latitude and longitude of the start, or read them from a track.';

export function startOfRide(draft: RideDraft): Coordinates | null {
  const latitude = readCoordinate(draft.latitude, 'latitude');
  const longitude = readCoordinate(draft.longitude, 'longitude');
  return latitude === null || longitude === null ? null : { latitude, longitude };
}

/** The forecast at the ride's first place, from an hour before to an hour after it. */
export function useRideForecast(draft: RideDraft, ride: Ride | null, now: Instant | null): AskedHours {
  const { latitude, longitude } = startOfRide(draft) ?? {};
  const reached = ride === null || now === null || forecastReaches(ride.stops[0]!.arrive, now);
  const asked = draft.air === 'forecast' && latitude !== undefined && longitude !== undefined;
  const path = asked && reached && ride !== null && now !== null ? pathOf(ride, latitude, longitude) : null;
  const { data, error, isLoading } = useSWR(path, ask, ASK_ONCE);
  return useMemo(() => {
    if (draft.air !== 'forecast') return NOTHING_ASKED;
    if (!asked) return { ...NOTHING_ASKED, problem: NO_START };
    if (!reached) return { ...NOTHING_ASKED, problem: BEYOND_FORECAST };
    if (error instanceof Error) return { ...NOTHING_ASKED, problem: error.message };
    if (data === undefined) return { ...NOTHING_ASKED, asking: isLoading };
    const { attribution, attributionUrl } = data;
    const credit = { text: attribution, url: attributionUrl };
    return { ...NOTHING_ASKED, series: forecastSeries(data), credit };
  }, [draft.air, asked, reached, data, error, isLoading]);
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
