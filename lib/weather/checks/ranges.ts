import { RANGE, within } from '@/lib/air/ranges';
import type { ServiceAnswer } from '@/lib/weather/service-hour';
import { type Finding, NOTHING, whole } from './finding';

/** One number that no air can have makes the whole answer suspect: other units, as a rule. */
export function checkRanges({ hours }: ServiceAnswer): Finding {
  for (const { temperature, dewPoint } of hours) {
    if (temperature !== null && !within(temperature, RANGE.temperature))
      return whole({ code: 'implausible', field: 'temperature', value: temperature });
    if (dewPoint !== null && !within(dewPoint, RANGE.dewPoint))
      return whole({ code: 'implausible', field: 'dew point', value: dewPoint });
  }
  return NOTHING;
}
