import { describe, expect, it } from 'vitest';
import type { Air } from '@/lib/air/air';
import { airAt } from '@/lib/air/air-from';
import { compressibility } from '@/lib/air/density';
import { baselineSetting } from '@/lib/carb/baseline-setting';
import { drifts } from '@/lib/carb/drift';
import { logNeed } from '@/lib/carb/need';
import { ORIFICE_LAW } from '@/lib/carb/response';
import { kelvin, pascal, ratio } from '@/lib/units/quantity';
import { idealSizes } from '@/tests/support/ideal-sizes';
import { airOf, raceMachine } from '../support/race-machine';

const BAR_HPA = 1000;

/** Air/fuel ratio of an untouched carburettor, from its ratio in the air it was set in. */
function airFuelRatio(setIn: { readonly air: Air; readonly ratio: number }, now: Air): number {
  const machine = raceMachine({ carburettors: [{ main: 120 }], baselineAir: setIn.air });
  const [drift] = drifts(machine, baselineSetting(machine), now, ORIFICE_LAW);
  return setIn.ratio / (1 + drift!);
}

describe('worked examples of carburettors taken up a mountain', () => {
  it('set to 14:1 at 27 °C and 1.013 bar it gives 10.99:1 at 5,000 m', () => {
    // Mathur & Sharma, Internal Combustion Engines, ex. 11.7, p. 273: t = t0 − 0.0065 h, h = 19200 log10(1.013/p).
    const atSeaLevel = { air: airOf(27, 1.013 * BAR_HPA), ratio: 14 };
    const up = airOf(27 - 0.0065 * 5000, (1.013 * BAR_HPA) / 10 ** (5000 / 19200));
    // Printed to the second digit; the book rounds on its way (10.985 unrounded).
    expect(Math.abs(airFuelRatio(atSeaLevel, up) - 10.99)).toBeLessThan(0.01);
  });

  it('set to 14:1 at 25 °C it gives 11.26:1 at 4,500 m', () => {
    // Rajput, Internal Combustion Engines, ex. 11.11, p. 407: t = t0 − 0.0064 h, p = p0 / 10^(h/19300).
    const atSeaLevel = { air: airOf(25, 1.013 * BAR_HPA), ratio: 14 };
    const up = airOf(25 - 0.0064 * 4500, (1.013 * BAR_HPA) / 10 ** (4500 / 19300));
    expect(Math.abs(airFuelRatio(atSeaLevel, up) - 11.26)).toBeLessThan(0.01);
  });
});

describe('enrichment of a fixed jet in the standard atmosphere', () => {
  // ISO 2533:1975, printed T and p; φ/φ0 = (ρ/ρ0)^−½ of its printed densities. The tolerance is half the last digit
  // of those percentages plus 0.01 for compressibility, which ISO 2533 leaves out.
  const sea = airOf(15, 1013.25);
  it.each([
    { metres: -1000, kelvins: 294.65, hectopascal: 1139.29, richer: -4.64 },
    { metres: 1000, kelvins: 281.65, hectopascal: 898.746, richer: 4.97 },
    { metres: 1500, kelvins: 278.4, hectopascal: 845.56, richer: 7.6 },
    { metres: 2000, kelvins: 275.15, hectopascal: 794.952, richer: 10.32 },
    { metres: 3000, kelvins: 268.65, hectopascal: 701.085, richer: 16.08 },
    { metres: 5000, kelvins: 255.65, hectopascal: 540.199, richer: 29.0 },
  ])('$metres m: $richer %', ({ kelvins, hectopascal, richer }) => {
    const up = airAt({
      temperature: kelvin(kelvins),
      pressure: pascal(hectopascal * 100),
      relativeHumidity: ratio(0),
      pressureFrom: 'standard',
    });
    const machine = raceMachine({ baselineAir: sea });
    const [drift] = drifts(machine, baselineSetting(machine), up, ORIFICE_LAW);
    expect(Math.abs(100 * drift! - richer)).toBeLessThan(0.02);
  });

  it('jet area goes with √ρ and bored diameter with its fourth root', () => {
    // Heywood, section 7.2 (from memory): fuel goes with A √ρ, air with ρ. At 2000 m, ρ/ρ0 = 0.82162 (ISO 2533).
    const up = airOf(2, 794.952);
    const flow = raceMachine({ baselineAir: sea, carburettors: [{ main: 400 }] });
    const bore = raceMachine({ baselineAir: sea, carburettors: [{ main: 160 }], marking: { kind: 'bore' } });
    expect(idealSizes(flow, up, ORIFICE_LAW)[0]! / 400).toBeCloseTo(0.82162 ** 0.5, 4);
    expect(idealSizes(bore, up, ORIFICE_LAW)[0]! / 160).toBeCloseTo(0.82162 ** 0.25, 4);
  });
});

describe('temperature alone, at 1013.25 hPa and dry', () => {
  // Air/fuel against 20 °C by CIPM-2007 densities computed apart from this code; rounded to four digits.
  it.each([
    [-40, 1.1218],
    [-20, 1.0764],
    [0, 1.0361],
    [30, 0.9833],
    [40, 0.9675],
  ])('at %d °C the mixture stands at %d of its air/fuel ratio', (celsius, factor) => {
    const at20 = { air: airOf(20), ratio: 1 };
    expect(Math.abs(airFuelRatio(at20, airOf(celsius)) - factor)).toBeLessThan(2e-4);
  });
});

describe('humidity, from dry to saturated at 1013.25 hPa', () => {
  // CIPM-2007 densities computed apart from this code, in percent, to the digits given.
  it.each([
    { celsius: 0, all: -0.227, oxygen: -0.61 },
    { celsius: 10, all: -0.457, oxygen: -1.22 },
    { celsius: 20, all: -0.869, oxygen: -2.32 },
    { celsius: 30, all: -1.577, oxygen: -4.21 },
    { celsius: 40, all: -2.739, oxygen: -7.32 },
  ])('at $celsius °C density changes by $all %, its oxygen by $oxygen %', ({ celsius, all, oxygen }) => {
    const dry = airOf(celsius);
    const wet = airOf(celsius, 1013.25, 1);
    expect(Math.abs(100 * (wet.density / dry.density - 1) - all)).toBeLessThan(0.01);
    // The oxygen column counts moles; a mass per volume also carries compressibility, 0.03 % at 40 °C.
    const squeeze = compressibility(dry) / compressibility(wet);
    const oxygenLeft = wet.dryDensity / dry.dryDensity / squeeze;
    expect(Math.abs(100 * (oxygenLeft - 1) - oxygen)).toBeLessThan(0.01);
    // The oxygen wants fuel, the whole density draws it.
    const need = ((1 + oxygen / 100) * squeeze) / Math.sqrt(1 + all / 100);
    expect(Math.abs(Math.exp(logNeed(wet, dry)) / need - 1)).toBeLessThan(1e-4);
  });
});
