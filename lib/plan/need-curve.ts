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

/** Ambient states in one column, stretch after stretch of it: as the hours say, and moved. */
const MOVES = [
  { warmer: 0, higher: 0 },
  { warmer: -WIDTH, higher: 0 },
  { warmer: WIDTH, higher: 0 },
  { warmer: 0, higher: PRESSURE_STEP },
] as const;

/**
 * ln(ρ_dry/√ρ) at the carburettor, humidity carried in as vapour: of instant i moved by move m at [m * instants + i].
 */
function logNeeds(track: Track, offset: number): Float64Array {
  const count = track.at.length;
  const temperature = new Float64Array(MOVES.length * count);
  const pressure = new Float64Array(MOVES.length * count);
  const relativeHumidity = new Float64Array(MOVES.length * count);
  let at = 0;
  for (const { warmer, higher } of MOVES) {
    const grow = Math.exp(higher);
    for (let i = 0; i < count; i++, at++) {
      const ambient = track.temperature[i]! + warmer;
      const rh = track.relativeHumidity[i]!;
      temperature[at] = ambient + offset;
      pressure[at] = track.pressure[i]! * grow;
      // The intake warms the air at the same vapour mole fraction; cooling below the dew point leaves it saturated.
      relativeHumidity[at] =
        offset === 0
          ? rh
          : Math.min(
              1,
              (rh * saturated(ambient, pressure[at]!)) / saturated(temperature[at]!, pressure[at]!),
            );
    }
  }
  const density = new Float64Array(at);
  const dryDensity = new Float64Array(at);
  fillDensities({ temperature, pressure, relativeHumidity }, { density, dryDensity });
  for (let i = 0; i < at; i++) density[i] = Math.log(dryDensity[i]!) - Math.log(density[i]!) / 2;
  return density;
}

/** Vapour pressure of saturated air [Pa], as real air has it. */
function saturated(t: number, p: number): number {
  return saturationOverWater(kelvin(t)) * enhancementFactor(kelvin(t), pascal(p));
}

/** @param offset carburettor air minus ambient air [K] */
export function needCurve(track: Track, offset: KelvinDifference): NeedCurve {
  const count = track.at.length;
  const needs = logNeeds(track, offset);
  const column = () => new Float64Array(count);
  const curve = {
    level: needs.subarray(0, count),
    slope: column(),
    bend: column(),
    pressureSlope: column(),
    lnPressure: column(),
    lnTemperature: column(),
    temperature: column(),
  };
  for (let i = 0; i < count; i++) {
    const middle = needs[i]!;
    const colder = needs[count + i]!;
    const warmer = needs[2 * count + i]!;
    const temperature = track.temperature[i]! + offset;
    curve.slope[i] = (warmer - colder) / (2 * WIDTH);
    curve.bend[i] = (warmer - 2 * middle + colder) / (2 * WIDTH * WIDTH);
    curve.pressureSlope[i] = (needs[3 * count + i]! - middle) / PRESSURE_STEP;
    curve.lnPressure[i] = Math.log(track.pressure[i]!);
    curve.lnTemperature[i] = Math.log(temperature);
    curve.temperature[i] = temperature;
  }
  return curve;
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
