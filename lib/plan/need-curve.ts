import { fillDensities } from '@/lib/air/batch';
import { enhancementFactor } from '@/lib/air/density';
import { saturationOverWater } from '@/lib/air/saturation';
import { fuelDensityRatio } from '@/lib/carb/fuel-density';
import type { FuelDensityOption } from '@/lib/carb/machine';
import { type KelvinDifference, kelvin, pascal } from '@/lib/units/quantity';
import type { Track } from './readings';

/**
 * The need of a track's air at the carburettor, as a parabola around its mean, instant by instant:
 *
 *     ln(ρ_dry/√ρ) = level + slope δT + bend δT² + pressureSlope δ(ln p)
 *
 * δT [K] and δ(ln p) are the errors of the hours. The dew-point depression is held, so humidity moves with δT. Through
 * three temperatures 4 K apart this is within 1e-4 over three standard deviations, a hundredth of what is not known.
 */
export type NeedCurve = {
  readonly level: Float64Array;
  readonly slope: Float64Array;
  readonly bend: Float64Array;
  readonly pressureSlope: Float64Array;
  /** ln of station pressure and of temperature at the carburettor, and that temperature [K]. */
  readonly lnPressure: Float64Array;
  readonly lnTemperature: Float64Array;
  readonly temperature: Float64Array;
};

/** Half width of the parabola's three points [K]. */
const WIDTH = 4;
/** Step for the slope with ln p. */
const PRESSURE_STEP = 0.01;

/** ln(ρ_dry/√ρ) at the carburettor for ambient states, humidity carried in as vapour. */
function logNeeds(
  track: Track,
  at: { readonly warmer: number; readonly higher: number; readonly offset: number },
) {
  const ambient = track.temperature.map((t) => t + at.warmer);
  const temperature = ambient.map((t) => t + at.offset);
  const pressure = track.pressure.map((p) => p * Math.exp(at.higher));
  // The intake warms the air at the same vapour mole fraction; cooling below the dew point leaves it saturated.
  const saturated = (t: number, p: number) =>
    saturationOverWater(kelvin(t)) * enhancementFactor(kelvin(t), pascal(p));
  const relativeHumidity = track.relativeHumidity.map((rh, i) =>
    at.offset === 0
      ? rh
      : Math.min(1, (rh * saturated(ambient[i]!, pressure[i]!)) / saturated(temperature[i]!, pressure[i]!)),
  );
  const density = new Float64Array(ambient.length);
  const dryDensity = new Float64Array(ambient.length);
  fillDensities({ temperature, pressure, relativeHumidity }, { density, dryDensity });
  return density.map((all, i) => Math.log(dryDensity[i]!) - Math.log(all) / 2);
}

/** @param offset carburettor air minus ambient air [K] */
export function needCurve(track: Track, offset: KelvinDifference): NeedCurve {
  const level = logNeeds(track, { warmer: 0, higher: 0, offset });
  const colder = logNeeds(track, { warmer: -WIDTH, higher: 0, offset });
  const warmer = logNeeds(track, { warmer: WIDTH, higher: 0, offset });
  const higher = logNeeds(track, { warmer: 0, higher: PRESSURE_STEP, offset });
  const temperature = track.temperature.map((t) => t + offset);
  return {
    level,
    slope: level.map((_, i) => (warmer[i]! - colder[i]!) / (2 * WIDTH)),
    bend: level.map((middle, i) => (warmer[i]! - 2 * middle + colder[i]!) / (2 * WIDTH * WIDTH)),
    pressureSlope: level.map((middle, i) => (higher[i]! - middle) / PRESSURE_STEP),
    lnPressure: track.pressure.map(Math.log),
    lnTemperature: temperature.map(Math.log),
    temperature,
  };
}

/** The same curve where the fuel's own density counts: − ½ ln(ρ_f/ρ_f0) joins the need. */
export function withFuel(curve: NeedCurve, track: Track, option: FuelDensityOption | null): NeedCurve {
  if (option === null) return curve;
  const fuel = (warmer: number) =>
    track.temperature.map((t) => -Math.log(fuelDensityRatio(option, kelvin(t + warmer))) / 2);
  const [colder, middle, warmer] = [fuel(-WIDTH), fuel(0), fuel(WIDTH)];
  return {
    ...curve,
    level: curve.level.map((n, i) => n + middle[i]!),
    slope: curve.slope.map((n, i) => n + (warmer[i]! - colder[i]!) / (2 * WIDTH)),
    bend: curve.bend.map((n, i) => n + (warmer[i]! - 2 * middle[i]! + colder[i]!) / (2 * WIDTH * WIDTH)),
  };
}
