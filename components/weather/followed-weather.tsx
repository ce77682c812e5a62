'use client';

import { useNow } from '@/components/store/use-now';
import type { EventRecord, Stored } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { useForecast } from './use-forecast';
import { WeatherSection } from './weather-section';

type FollowedWeatherProps = { readonly event: Stored<EventRecord> };

/** The weather of a night that has no plan yet: it is followed here, so that the plan comes by itself. */
export function FollowedWeather({ event }: FollowedWeatherProps) {
  const now = useNow();
  return now === null ? null : <WeatherNow event={event} now={now} />;
}

function WeatherNow({ event, now }: FollowedWeatherProps & { readonly now: Instant }) {
  return <WeatherSection event={event} now={now} forecast={useForecast(event, now)} />;
}
