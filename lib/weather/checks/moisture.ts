import { dewPointOf, saturationOverWater } from '@/lib/air/saturation';
import { celsiusToKelvin, kelvinToCelsius } from '@/lib/units/convert';
import { type Kelvin, kelvin, pascal } from '@/lib/units/quantity';
import type { ServiceAnswer, ServiceHour } from '@/lib/weather/service-hour';
import type { Expected } from './expected';
import { type Finding, NOTHING, whole } from './finding';
import { MOISTURE, STRETCH } from './limits';
import { deviation, line, median } from './statistics';

/** Drier than this no air is, and a dew point needs some vapour [1]. */
const DRIEST = 0.001;

const HIGHEST_DEW_POINT = celsiusToKelvin(MOISTURE.highestDewPointC);

type MoistHour = {
  readonly hour: ServiceHour;
  readonly temperature: Kelvin;
  readonly dewPoint: Kelvin;
  readonly humidity: number;
  /** From dew point up to temperature, as told [K]. */
  readonly told: number;
  /** The same as the humidity makes it [K]. */
  readonly meant: number;
};

/**
 * Do temperature, dew point and humidity belong to one air? Any two make the third, so °F called °C, a fraction taken
 * for a percentage, swapped columns and a temperature from elsewhere all show.
 */
export function checkMoisture({ hours }: ServiceAnswer, expected: Expected): Finding {
  const humidities = hours.map((hour) => hour.relativeHumidity).filter((value) => value !== null);
  if (humidities.length > 0 && humidities.every((value) => value <= MOISTURE.fraction))
    return whole({ code: 'humidity-disagrees' });
  const moist = hours.flatMap(moistHour);
  if (moist.length === 0) return NOTHING;
  const offset = median(moist.map(({ told, meant }) => told - meant));
  const frost = frostSlack(median(moist.map(({ temperature }) => temperature)));
  const most = expected.movesTemperatureOnly ? MOISTURE.movedOffset : MOISTURE.offset + frost;
  if (Math.abs(offset) > most || isStretched(moist)) return whole({ code: 'humidity-disagrees' });
  const apart = moist.filter((one) => isApart(one, offset) || one.dewPoint > HIGHEST_DEW_POINT);
  return { kind: 'hours', at: apart.map((one) => one.hour.at) };
}

function moistHour(hour: ServiceHour): readonly MoistHour[] {
  const { temperature, dewPoint, relativeHumidity: humidity } = hour;
  if (temperature === null || dewPoint === null || humidity === null) return [];
  const meant = dewPointOf(pascal(Math.max(humidity, DRIEST) * saturationOverWater(temperature)));
  if (meant === null) return [];
  return [
    {
      hour,
      temperature,
      dewPoint,
      humidity,
      told: temperature - dewPoint,
      meant: temperature - meant,
    },
  ];
}

/** What humidity over ice instead of water may make of the gap [K]. */
function frostSlack(temperature: number): number {
  return MOISTURE.perDegreeOfFrost * Math.max(0, -kelvinToCelsius(kelvin(temperature)));
}

function isApart({ temperature, dewPoint, humidity, told, meant }: MoistHour, offset: number): boolean {
  const apart = Math.abs(told - meant - offset) > MOISTURE.hour + frostSlack(temperature);
  const made = saturationOverWater(dewPoint) / saturationOverWater(kelvin(temperature - offset));
  return apart && Math.abs(made - humidity) > MOISTURE.hourHumidity;
}

/** Told gaps over meant gaps: a slope far above one is a finer scale of degrees, one below nought swapped columns. */
function isStretched(moist: readonly MoistHour[]): boolean {
  if (moist.length < STRETCH.fewestHours) return false;
  const meant = moist.map((one) => one.meant);
  if (deviation(meant) < STRETCH.leastSpread) return false;
  const { slope, share } = line(
    meant,
    moist.map((one) => one.told),
  );
  return share >= STRETCH.leastShare && (slope > STRETCH.most || slope < STRETCH.least);
}
