import { ASSUMED_RELATIVE_HUMIDITY } from '@/lib/contract/air-from-json';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { formatPercent } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';
import { dateClockText } from './times';

/** Said wherever a humidity had to be assumed. */
export function humidityAssumedSentence(): string {
  return `No humidity was given, so ${formatPercent(ratio(ASSUMED_RELATIVE_HUMIDITY))} is assumed. Below freezing it hardly counts; on a warm day it is worth giving.`;
}

/** Said wherever the standard atmosphere stands in for a pressure. */
export function pressureEstimateSentence(): string {
  return 'No pressure was given, so the standard atmosphere at this elevation stands in. Weather moves the real one by up to 3 %: a barometer or a forecast is better.';
}

/** Said where no service answered and the last good copy stands in. */
export function oldForecastSentence(fetchedAt: Instant | null, zone: ClockZone): string {
  const since = fetchedAt === null ? 'an earlier answer' : `the answer of ${dateClockText(fetchedAt, zone)}`;
  return `No weather service answers now, so ${since} is used. Take a reading at the track.`;
}
