'use client';

import { useNow } from '@/components/store/use-now';
import { useOpenedBy } from '@/components/ui/use-opened-by';
import type { EventRecord, Stored } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { useForecast } from './use-forecast';
import { WeatherSection } from './weather-section';

type FollowedWeatherProps = Pick<Parameters<typeof WeatherSection>[0], 'typing'> & {
  readonly event: Stored<EventRecord>;
};

/** The weather of a night that has no plan yet: it is followed here, so that the plan comes by itself. */
export function FollowedWeather(props: FollowedWeatherProps) {
  const now = useNow();
  return now === null ? null : <WeatherNow {...props} now={now} />;
}

/** What opens it: its own link, and the form that stands in it. */
const OPENERS: readonly string[] = ['weather', 'forecast'];

function WeatherNow({ event, now, typing }: FollowedWeatherProps & { readonly now: Instant }) {
  const forecast = useForecast(event, now);
  const open = useOpenedBy(OPENERS);
  // A night that follows no forecast has nothing to tell of it.
  return open || forecast.status !== 'off' ? <WeatherSection {...{ event, now, forecast, typing }} /> : null;
}
