import { seaLevelFromStation, stationFromSeaLevel } from '@/lib/air/pressure';
import { RANGE, within } from '@/lib/air/ranges';
import { STANDARD } from '@/lib/air/standard-atmosphere';
import { type Metre, ratio } from '@/lib/units/quantity';
import type { ServiceAnswer, ServiceHour } from '@/lib/weather/service-hour';
import { type Finding, NOTHING, whole } from './finding';
import { PRESSURE, SWING } from './limits';
import { deviation, line, median } from './statistics';

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
  if (Math.abs(offset) > most || isSwinging(hours, elevation)) return whole({ code: 'pressure-disagrees' });
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

/**
 * Temperatures told over those in the pressures: the mean of the column is g H / (R ln(p_sea/p)), and half of it up the
 * standard lapse lies the site. Source: the hypsometric equation, ISO 2533:1975, eq. 13, with the lapse put in after.
 */
function isSwinging(hours: readonly ServiceHour[], elevation: Metre): boolean {
  const pairs = hours.flatMap(({ temperature, stationPressure, seaLevelPressure }) => {
    if (temperature === null || stationPressure === null || seaLevelPressure === null) return [];
    const column =
      (STANDARD.gravity * elevation) / (STANDARD.gasConstant * Math.log(seaLevelPressure / stationPressure));
    const within = column - (STANDARD.lapse * elevation) / 2;
    return Number.isFinite(within) ? [{ temperature, within }] : [];
  });
  const meant = pairs.map((pair) => pair.within);
  if (pairs.length < SWING.fewestHours || deviation(meant) < SWING.leastSpread) return false;
  const { slope, share } = line(
    meant,
    pairs.map((pair) => pair.temperature),
  );
  return share >= SWING.leastShare && slope > SWING.most;
}

function isOfAnotherHeight(hour: ServiceHour, elevation: Metre): boolean {
  const { temperature, stationPressure, seaLevelPressure } = hour;
  if (temperature === null || stationPressure === null || seaLevelPressure !== null) return false;
  const column = { elevation, temperature, relativeHumidity: hour.relativeHumidity ?? MIDDLING };
  return !within(seaLevelFromStation(stationPressure, column), RANGE.seaLevel);
}
