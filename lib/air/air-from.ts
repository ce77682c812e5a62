import { fail, ok, type Result } from '@/lib/result/result';
import { type Kelvin, type Pascal, pascal, type Ratio, ratio } from '@/lib/units/quantity';
import type { Air, AirGiven, AirProblem, PressureKind } from './air';
import { airProblem } from './check';
import { dryDensity, moistDensity, vapourMoleFraction } from './density';
import { relativeHumidityOf } from './humidity';
import { stationPressure } from './pressure';
import { dewPointOf, frostPointOf, saturationOverWater } from './saturation';
import { densityAltitude, STANDARD } from './standard-atmosphere';

/** Air whose station pressure and relative humidity are known already. */
export type AirState = {
  readonly temperature: Kelvin;
  /** Station pressure. */
  readonly pressure: Pascal;
  /** Over liquid water. */
  readonly relativeHumidity: Ratio;
  readonly pressureFrom: PressureKind;
};

/** Moist air from a state that is known to be good: computed, or checked before. Throws on impossible numbers. */
export function airAt({ temperature, pressure, relativeHumidity, pressureFrom }: AirState): Air {
  if (!(temperature > 0 && pressure > 0 && relativeHumidity >= 0))
    throw new RangeError(`not air: ${temperature} K, ${pressure} Pa, relative humidity ${relativeHumidity}`);
  const vapourPressure = pascal(relativeHumidity * saturationOverWater(temperature));
  const state = {
    temperature,
    pressure,
    vapourMoleFraction: vapourMoleFraction({ temperature, pressure, vapourPressure }),
  };
  const density = moistDensity(state);
  // Written out: spreading the state here takes ten times as long as everything else together.
  return {
    temperature,
    pressure,
    pressureFrom,
    vapourMoleFraction: state.vapourMoleFraction,
    vapourPressure,
    relativeHumidity,
    dewPoint: dewPointOf(vapourPressure),
    frostPoint: frostPointOf(vapourPressure),
    density,
    dryDensity: dryDensity(state),
    relativeDensity: ratio(density / STANDARD.density),
    densityAltitude: densityAltitude(density),
  };
}

/** Moist air from what a person or a service gave, or why that is no air. */
export function airFrom(given: AirGiven): Result<Air, AirProblem> {
  const problem = airProblem(given);
  if (problem !== null) return fail(problem);
  const { temperature } = given;
  // Rounded readings may put the dew point a tenth above the temperature: that is saturated air.
  const relativeHumidity = ratio(Math.min(1, relativeHumidityOf(given.humidity, temperature)));
  const pressure = stationPressure(given.pressure, temperature, relativeHumidity);
  return ok(airAt({ temperature, pressure, relativeHumidity, pressureFrom: given.pressure.kind }));
}
