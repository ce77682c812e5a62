import type { Air } from '@/lib/air/air';
import { airFrom } from '@/lib/air/air-from';
import { compressibility, enhancementFactor } from '@/lib/air/density';
import { saturationOverWater } from '@/lib/air/saturation';
import { logNeed } from '@/lib/carb/need';
import { airShift, DEFAULT_RESPONSE, exponentsOf, logAreaOf, ORIFICE_LAW } from '@/lib/carb/response';
import { airFactor } from '@/lib/power/relative-power';
import { expectOk } from '@/lib/result/result';
import { fahrenheitToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { formatNumber, formatSignedPercent } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';

/** The two airs of the example: as proven at dusk, and the night that follows. */
const BASELINE = { fahrenheit: 18, hectopascal: 985, relativeHumidity: 0.8 };
const NIGHT = { fahrenheit: -10, hectopascal: 990, relativeHumidity: 0.8 };
const BASELINE_MAIN = 410;

export type ExampleRow = { readonly what: string; readonly baseline: string; readonly night: string };

function exampleAir(given: typeof BASELINE): Air {
  return expectOk(
    airFrom({
      temperature: fahrenheitToKelvin(given.fahrenheit),
      pressure: { kind: 'station', value: hectopascalToPascal(given.hectopascal) },
      humidity: { kind: 'relative', value: ratio(given.relativeHumidity) },
    }),
  );
}

type Step = { readonly what: string; readonly of: (air: Air) => string };

const STEPS: readonly Step[] = [
  { what: 'Temperature T [K]', of: (air) => formatNumber(air.temperature, 2) },
  { what: 'Station pressure p [Pa]', of: (air) => formatNumber(air.pressure) },
  {
    what: 'Saturation pressure over water e_w(T) [Pa]',
    of: (air) => formatNumber(saturationOverWater(air.temperature), 2),
  },
  { what: 'Vapour pressure (e = RH · e_w) [Pa]', of: (air) => formatNumber(air.vapourPressure, 2) },
  {
    what: 'Enhancement factor f',
    of: (air) => formatNumber(enhancementFactor(air.temperature, air.pressure), 5),
  },
  { what: 'Mole fraction of vapour (x_v = f e / p)', of: (air) => formatNumber(air.vapourMoleFraction, 6) },
  { what: 'Compressibility Z', of: (air) => formatNumber(compressibility(air), 6) },
  { what: 'Density of moist air ρ [kg/m³]', of: (air) => formatNumber(air.density, 5) },
  { what: 'Density of the dry air in it ρ_dry [kg/m³]', of: (air) => formatNumber(air.dryDensity, 5) },
];

/** From two airs to a jet, step by step; every number is computed by the code that plans. */
export function workedExample() {
  const [baseline, night] = [exampleAir(BASELINE), exampleAir(NIGHT)];
  const shift = airShift(night, baseline);
  const byResponse = logAreaOf(shift, exponentsOf(DEFAULT_RESPONSE));
  const size = (logArea: number): string => formatNumber(BASELINE_MAIN * Math.exp(logArea), 1);
  return {
    given: { baseline: BASELINE, night: NIGHT, main: BASELINE_MAIN },
    rows: STEPS.map(({ what, of }): ExampleRow => ({ what, baseline: of(baseline), night: of(night) })),
    needPercent: formatSignedPercent(ratio(Math.expm1(logNeed(night, baseline))), 2),
    areaPercent: formatSignedPercent(ratio(Math.expm1(byResponse)), 2),
    byNeed: size(logAreaOf(shift, ORIFICE_LAW)),
    byResponse: size(byResponse),
    driftPercent: formatSignedPercent(ratio(Math.expm1(-byResponse)), 2),
    powerPercent: formatSignedPercent(ratio(airFactor(night, baseline) - 1), 1),
  };
}
