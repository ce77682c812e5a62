import type { ServiceAnswer } from '@/lib/weather/service-hour';
import { type Finding, NOTHING, whole } from './finding';
import { FLAT_PART_MS, FLAT_WHOLE_MS, SAME_K } from './limits';

/** Does the temperature move at all? Pressure and humidity may stand still for a night, and do. */
export function checkConstancy({ hours }: ServiceAnswer): Finding {
  const told = hours.filter(({ temperature }) => temperature !== null);
  let start = 0;
  for (const [i, hour] of told.entries()) {
    const from = told[start];
    if (from === undefined) return NOTHING;
    if (Math.abs((hour.temperature ?? 0) - (from.temperature ?? 0)) > SAME_K) start = i;
    else if (hour.at - from.at >= (start === 0 && i === told.length - 1 ? FLAT_WHOLE_MS : FLAT_PART_MS))
      return whole({ code: 'flat' });
  }
  return NOTHING;
}
