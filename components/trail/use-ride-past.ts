'use client';

import { useMemo } from 'react';
import useSWR from 'swr';
import { askFor } from '@/components/server/ask-for';
import type { RideDraft } from '@/lib/fields/trail/trail-rows';
import type { Instant } from '@/lib/time/instant';
import { localClock, localDate } from '@/lib/time/zone';
import { forecastReaches } from '@/lib/trail/forecast-reach';
import { pastHours } from '@/lib/trail/past-hours';
import type { Ride } from '@/lib/trail/ride';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { metre, ratio } from '@/lib/units/quantity';
import { historyJsonSchema } from '@/lib/weather/history-json';
import type { Coordinates } from '@/lib/weather/place';
import { FORECAST_IS_CLOSER, NO_PAST_HOURS, pastRideSentence } from '@/lib/words/past-ride';
import { ASK_ONCE, type AskedHours, NO_START, NOTHING_ASKED, startOfRide } from './use-ride-forecast';

async function ask(path: string) {
  const answer = await askFor({
    path,
    reader: historyJsonSchema,
    instead: 'Type the temperatures of the ride yourself.',
  });
  if (answer.ok) return answer.value;
  throw new Error(answer.reason);
}

type Riding = { readonly zone: string | null; readonly units: UnitChoice; readonly now: Instant | null };

/** What the month of the ride was like in past years at its start, in the clock hours that are ridden. */
export function useRidePast(draft: RideDraft, ride: Ride | null, { zone, units, now }: Riding): AskedHours {
  const start = startOfRide(draft);
  const hasStart = start !== null;
  const { air, pastHours: percentile } = draft;
  const hours = ride === null || zone === null ? null : hoursOf(ride, zone);
  const path =
    air !== 'past' || start === null || ride === null || zone === null || hours === null
      ? null
      : pathOf(ride, start, { zone, hours });
  const { data, error, isLoading } = useSWR(path, ask, ASK_ONCE);
  return useMemo(() => {
    if (air !== 'past') return NOTHING_ASKED;
    if (!hasStart) return { ...NOTHING_ASKED, problem: NO_START };
    if (error instanceof Error) return { ...NOTHING_ASKED, problem: error.message };
    if (data === undefined || ride === null || hours === null) return { ...NOTHING_ASKED, asking: isLoading };
    const [month] = data.months;
    if (month === undefined) return { ...NOTHING_ASKED, problem: NO_PAST_HOURS };
    const { attribution, attributionUrl } = data;
    const series = pastHours(
      ride,
      {
        temperature: celsiusToKelvin(month.temperatureC[percentile]),
        pressure: hectopascalToPascal(month.pressureHpa.p50),
        relativeHumidity: ratio(month.relativeHumidity.p50),
        elevation: metre(data.elevationM),
      },
      { name: 'past winters', attribution, attributionUrl },
    );
    const closer =
      now !== null && forecastReaches(ride.stops[0]!.arrive, now) ? ` ${FORECAST_IS_CLOSER}` : '';
    return {
      series,
      asking: false,
      problem: null,
      note: `${pastRideSentence(data, hours, { percentile, units })}${closer}`,
      credit: { text: attribution, url: attributionUrl },
    };
  }, [air, hasStart, ride, hours, percentile, units, now, data, error, isLoading]);
}

/** "9-14": the clock hours of the ride, all of them where it goes over midnight. */
function hoursOf({ stops }: Ride, zone: string): string {
  const [first, last] = [stops[0]!.arrive, stops.at(-1)!.leave];
  if (localDate(first, zone) !== localDate(last, zone)) return '0-24';
  const hour = (at: Instant) => Number(localClock(at, zone).slice(0, 2));
  return `${hour(first)}-${hour(last) + 1}`;
}

type Asking = { readonly zone: string; readonly hours: string };

function pathOf({ stops }: Ride, { latitude, longitude }: Coordinates, { zone, hours }: Asking): string {
  const { arrive, elevation } = stops[0]!;
  const query = new URLSearchParams({
    lat: latitude.toFixed(4),
    lon: longitude.toFixed(4),
    elevation: String(Math.round(elevation)),
    months: String(Number(localDate(arrive, zone).slice(5, 7))),
    hours,
  });
  return `/api/history?${query}`;
}
