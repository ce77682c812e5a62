import { SERVER_WEATHER } from '@/app/api/_weather/server-weather';
import { getForecast } from '@/lib/weather/get-forecast';
import type { LiveDeps } from './live-night';

export const SERVER_LIVE: LiveDeps = {
  fetchForecast: (question) => getForecast(question, SERVER_WEATHER),
  now: SERVER_WEATHER.now,
};
