import type { AirNow } from '@/lib/club/air-now';
import type { UnitChoice } from '@/lib/units/choice';
import { formatElevation, formatTemperature, formatTemperatureStep } from '@/lib/units/format';
import { kelvinDifference, metre } from '@/lib/units/quantity';

/** The air in three pieces, for a line that is read from far away. */
export type AirWords = {
  /** "−12.3 °C". */
  readonly temperature: string;
  /** "DA −640 m". */
  readonly densityAltitude: string;
  /** "1.2 °C colder, DA 60 m lower than an hour ago"; '' where the hours do not reach back so far. */
  readonly drift: string;
};

export function airWords({ air, hourAgo }: AirNow, units: UnitChoice): AirWords {
  return {
    temperature: formatTemperature(air.temperature, units),
    densityAltitude: `DA ${formatElevation(air.densityAltitude, units)}`,
    drift:
      hourAgo === null
        ? ''
        : `${temperatureDrift(air.temperature - hourAgo.temperature, units)}, ${altitudeDrift(air.densityAltitude - hourAgo.densityAltitude, units)} than an hour ago`,
  };
}

function temperatureDrift(change: number, units: UnitChoice): string {
  const step = formatTemperatureStep(kelvinDifference(Math.abs(change)), units);
  if (!/[1-9]/.test(step)) return 'same temperature';
  return `${step} ${change < 0 ? 'colder' : 'warmer'}`;
}

function altitudeDrift(change: number, units: UnitChoice): string {
  // A change of nothing is neither higher nor lower; "0 m higher" says so well enough.
  return `DA ${formatElevation(metre(Math.abs(change)), units)} ${change >= 0 ? 'higher' : 'lower'}`;
}
