import { ASSUMED_RELATIVE_HUMIDITY } from '@/lib/contract/air-from-json';
import { formatPercent } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';

/** Said wherever a humidity had to be assumed. */
export function humidityAssumedSentence(): string {
  return `No humidity was given, so ${formatPercent(ratio(ASSUMED_RELATIVE_HUMIDITY))} is assumed. Below freezing it hardly counts; on a warm day it is worth giving.`;
}

/** Said wherever the standard atmosphere stands in for a pressure. */
export function pressureEstimateSentence(): string {
  return 'No pressure was given, so the standard atmosphere at this elevation stands in. Weather moves the real one by up to 3 %: a barometer or a forecast is better.';
}
