import { seaLevelFromStation, stationFromSeaLevel } from '@/lib/air/pressure';
import { RANGE, within } from '@/lib/air/ranges';
import { type Metre, ratio } from '@/lib/units/quantity';
import type { ServiceAnswer, ServiceHour } from '@/lib/weather/service-hour';
import { type Finding, NOTHING, whole } from './finding';
import { PRESSURE } from './limits';
import { median } from './statistics';

/** Where humidity is missing; it hardly counts in a column of air. */
const MIDDLING = ratio(0.7);

/**
 * Do station pressure, sea-level pressure, height and temperature belong together? Where both are given the one follows
 * from the other; where only station pressure is, the sea below it must have a pressure that seas have.
 */
export function checkPressure({ hours, elevation }: ServiceAnswer): Finding {
  const differences = hours.flatMap((hour) => difference(hour, elevation));
  const offset = median(differences.map(({ by }) => by));
  const most = PRESSURE.least + PRESSURE.perMetre * Math.abs(elevation);
  if (Math.abs(offset) > most) return whole({ code: 'pressure-disagrees' });
  const apart = differences.filter(({ by }) => Math.abs(by - offset) > most + PRESSURE.hour);
  const outside = hours.filter((hour) => isOfAnotherHeight(hour, elevation));
  const at = [...apart, ...outside].map((one) => one.at);
  return at.length === 0 ? NOTHING : { kind: 'hours', at };
}

/** Station pressure less what the sea-level pressure makes it [Pa]. */
function difference(
  hour: ServiceHour,
  elevation: Metre,
): readonly { readonly at: ServiceHour['at']; readonly by: number }[] {
  const { at, temperature, stationPressure, seaLevelPressure } = hour;
  if (temperature === null || stationPressure === null || seaLevelPressure === null) return [];
  const column = { elevation, temperature, relativeHumidity: hour.relativeHumidity ?? MIDDLING };
  return [{ at, by: stationPressure - stationFromSeaLevel(seaLevelPressure, column) }];
}

function isOfAnotherHeight(hour: ServiceHour, elevation: Metre): boolean {
  const { temperature, stationPressure, seaLevelPressure } = hour;
  if (temperature === null || stationPressure === null || seaLevelPressure !== null) return false;
  const column = { elevation, temperature, relativeHumidity: hour.relativeHumidity ?? MIDDLING };
  return !within(seaLevelFromStation(stationPressure, column), RANGE.seaLevel);
}
