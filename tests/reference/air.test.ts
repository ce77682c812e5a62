import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { moistDensity } from '@/lib/air/density';
import {
  hectopascalToPascal,
  millimetreOfMercuryToPascal,
  pascalToHectopascal,
  ZERO_CELSIUS_K,
} from '@/lib/units/convert';
import { kelvin, ratio } from '@/lib/units/quantity';
import { airOf, expectWithin, frostPoint, relative, station } from '../support/air';
import { cipm2007 } from '../support/cipm-2007';
import { referenceTable } from '../support/reference-table';

describe('density against CIPM-2007', () => {
  // Picard et al., Metrologia 45 (2008) 149, computed independently and, to 7 decimals, by the R package masscor
  // (airDensity, model CIMP2007). 2e-6 covers the other saturation equation used below 0 °C (at most 3e-6 at 100 %).
  it.each([
    [20, 101_325, 0.5, 1.1993139],
    [20, 101_325, 0, 1.2045573],
    [0, 101_325, 0, 1.2930487],
    [15, 101_325, 0, 1.2255213],
    [-20, 101_325, 0.5, 1.3952961],
    [-40, 104_000, 0, 1.5560025],
    [30, 70_000, 1, 0.7862031],
    [40, 101_325, 1, 1.0965541],
  ])('%d °C, %d Pa, humidity %d is %d kg/m³', (t, p, h, expected) => {
    expectWithin(airOf(t, station(p / 100), relative(h)).density, expected, 2e-6);
    expectWithin(cipm2007({ t, p, h }).density, expected, 2e-6);
  });

  // The same equation at 1013.25 hPa, printed to five decimals: 5e-6 of 1.2 is the rounding.
  it.each([
    [-40, 1.51593, 1.51588, 1.51582],
    [-30, 1.45328, 1.45315, 1.45301],
    [-20, 1.39562, 1.3953, 1.39497],
    [-10, 1.34237, 1.34166, 1.34094],
    [0, 1.29305, 1.29158, 1.29011],
    [10, 1.24723, 1.24438, 1.24153],
    [20, 1.20456, 1.19931, 1.19409],
    [30, 1.16472, 1.15551, 1.14635],
    [40, 1.12743, 1.11195, 1.09655],
  ])('at %d °C dry, half and fully saturated air match the table', (t, dry, half, full) => {
    expectWithin(airOf(t, station(1013.25), relative(0)).density, dry, 1e-5);
    expectWithin(airOf(t, station(1013.25), relative(0.5)).density, half, 1e-5);
    expectWithin(airOf(t, station(1013.25), relative(1)).density, full, 1e-5);
  });

  it('stays within 0.01 % from -40 to 40 °C, 70 to 104 kPa and dry to saturated', () => {
    for (let t = -40; t <= 40; t += 2.5)
      for (let p = 70_000; p <= 104_000; p += 2_000)
        for (let h = 0; h <= 1; h += 0.125) {
          const air = airOf(t, station(p / 100), relative(h));
          expectWithin(air.density, cipm2007({ t, p, h }).density, 1e-4);
          expectWithin(air.dryDensity, cipm2007({ t, p, h }).dryDensity, 1e-4);
        }
  });

  it('stays within 0.15 % of psychrolib, an ideal-gas library, over the same range', () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    let worst = 0;
    for (let t = -40; t <= 40; t += 2.5)
      for (let p = 70_000; p <= 104_000; p += 2_000)
        for (let h = 0; h <= 1; h += 0.125) {
          const peer = psychrolib.GetMoistAirDensity(t, psychrolib.GetHumRatioFromRelHum(t, h, p), p);
          const off = airOf(t, station(p / 100), relative(h)).density / peer - 1;
          worst = Math.max(worst, Math.abs(off));
        }
    expect(worst).toBeLessThan(0.0015);
    // Real air is denser than an ideal gas, most of all when cold: the gap is there, not a slip of ours.
    expect(worst).toBeGreaterThan(0.001);
  });

  it('has the sensitivities of the paper', () => {
    // Picard et al., uncertainty table, printed as 1e-5 /Pa, -4e-3 /K, -9e-3; sharper values computed
    // independently. 5 % is the finite difference and the paper's own rounding.
    const at = (t: number, p: number, h: number) => Math.log(airOf(t, station(p / 100), relative(h)).density);
    expectWithin((at(20, 101_425, 0.5) - at(20, 101_225, 0.5)) / 200, 9.92e-6, 0.05);
    expectWithin((at(20.1, 101_325, 0.5) - at(19.9, 101_325, 0.5)) / 0.2, -3.69e-3, 0.05);
    expectWithin((at(20, 101_325, 0.51) - at(20, 101_325, 0.49)) / 0.02, -8.73e-3, 0.05);
  });
});

describe('density against other published values', () => {
  it('matches the tables of Gupta, Mass Metrology (Springer), appendix p. 205', () => {
    // Quoted in masscor, tests/testthat/test-airDensities.R. 1e-4: the book's second value is 58 ppm off the equation.
    const at = (t: number, mmHg: number, h: number) =>
      airOf(t, station(pascalToHectopascal(millimetreOfMercuryToPascal(mmHg))), relative(h)).density;
    expectWithin(at(10, 730, 0.4), 1.19569, 1e-4);
    expectWithin(at(40, 760, 0.4), 1.11497, 1e-4);
  });

  it('matches the worked examples of NISTIR 6969, SOP 2, appendix B', () => {
    // A short formula of the same accuracy class: 1e-4.
    const at = (t: number, mmHg: number, h: number) =>
      airOf(t, station(pascalToHectopascal(millimetreOfMercuryToPascal(mmHg))), relative(h)).density;
    expectWithin(at(22.3, 748.1, 0.37), 1.17194, 1e-4);
    expectWithin(at(23.4, 612.3, 0.23), 0.95632, 1e-4);
  });

  it('matches the approximation of OIML R 111-1 within what it claims', () => {
    // OIML R 111-1:2004, E.3-1 (from memory): for 10 to 30 °C and 900 to 1100 hPa, humidity to 80 %. It claims 2e-4
    // of CIPM-81 (one digit), and CIPM-2007 lies 7e-5 above that: 3e-4.
    for (const t of [10, 15, 20, 25, 30])
      for (const hpa of [900, 960, 1013.25, 1060, 1100])
        for (const percent of [0, 40, 80]) {
          const oiml = (0.34848 * hpa - 0.009 * percent * Math.exp(0.061 * t)) / (273.15 + t);
          expectWithin(airOf(t, station(hpa), relative(percent / 100)).density, oiml, 3e-4);
        }
  });

  it('matches the density of MetPy at 999 hPa, 288 K and a mixing ratio of 0.0016', () => {
    // MetPy, tests/calc/test_thermo.py: 1.2072 kg/m³ by the ideal-gas law, so 5e-4.
    const x = 0.0016 / (0.0016 + 0.62198);
    const rho = moistDensity({
      temperature: kelvin(288),
      pressure: hectopascalToPascal(999),
      vapourMoleFraction: ratio(x),
    });
    expectWithin(rho, 1.2072, 5e-4);
  });

  it('has the volumes of saturated air of the ASHRAE handbook', () => {
    // ASHRAE Handbook Fundamentals 2017, ch. 1, table 2, m³ per kg of dry air (from memory, four digits; 2e-4).
    // Below 0 °C the table is saturated over ice.
    const saturated = (t: number) =>
      airOf(t, station(1013.25), t < 0 ? frostPoint(t) : relative(1)).dryDensity;
    for (const [t, volume] of [
      [-40, 0.6597],
      [-20, 0.7173],
      [0, 0.7781],
      [20, 0.8498],
      [25, 0.8717],
      [30, 0.8962],
      [40, 0.9568],
    ] as const)
      expectWithin(1 / saturated(t), volume, 2e-4);
  });

  it('has the humidity ratios at saturation of the ASHRAE handbook', () => {
    // ASHRAE Handbook Fundamentals 2017, ch. 1, table 2, as quoted in psychrolib, tests/test_psychrolib_si.py.
    // 0.1 %: the enhancement factor of CIPM-2007 is a fit; the first value has three digits only.
    const ratioOf = (t: number) => {
      const x = airOf(t, station(1013.25), t < 0 ? frostPoint(t) : relative(1)).vapourMoleFraction;
      return (18.01528 / 28.96546) * (x / (1 - x));
    };
    expectWithin(ratioOf(-50), 0.0000243, 0.003);
    expectWithin(ratioOf(-20), 0.0006373, 1e-3);
    expectWithin(ratioOf(-5), 0.0024863, 1e-3);
    expectWithin(ratioOf(5), 0.005425, 1e-3);
    expectWithin(ratioOf(25), 0.020173, 1e-3);
    expectWithin(ratioOf(50), 0.086863, 1e-3);
  });
});

describe('real winter hours', () => {
  it('at 2317 m in Colorado match CIPM-2007 to 0.01 %', () => {
    const hours = referenceTable('hours-alamosa-co-2317m-surfrad-20160101.csv');
    expect(hours.length).toBe(24);
    for (const hour of hours) {
      const air = airOf(
        hour.number('t_C'),
        station(hour.number('p_station_Pa') / 100, 2317),
        relative(hour.number('RH_pct') / 100),
      );
      expectWithin(air.density, hour.number('rho_CIPM2007_kg_m3'), 1e-4);
    }
  });

  it('in Alaska match to 0.01 %, whether the humidity was over water or over ice', () => {
    const hours = referenceTable('hours-anchorage-ak-42m-tmy3-jan02.csv');
    expect(hours.length).toBe(24);
    for (const hour of hours) {
      const pressure = station(hour.number('p_station_Pa') / 100, 42);
      const t = hour.number('t_C');
      const expected = hour.number('rho_CIPM2007_kg_m3(RH over liquid)');
      expectWithin(airOf(t, pressure, relative(hour.number('RH_pct') / 100)).density, expected, 1e-4);
      expectWithin(airOf(t, pressure, frostPoint(hour.number('td_C'))).density, expected, 1e-4);
    }
  });

  it('in Jena match the density and the vapour pressure the station published', () => {
    for (const row of referenceTable('hours-jena-mpi-winter-rows.csv')) {
      const air = airOf(
        row.number('T_degC'),
        station(row.number('p_mbar')),
        relative(row.number('rh_pct') / 100),
      );
      // The station's logger takes air as an ideal gas, which is 0.08 % light at -8 °C: 0.1 %.
      expectWithin(air.density * 1000, row.number('rho_published_g_m3'), 1e-3);
      expectWithin(air.density * 1000, row.number('rho_CIPM2007_g_m3'), 1e-5);
      // 0.02 hPa: half a digit of print in pressure (0.005) and in temperature and humidity (0.003), and the logger's
      // own saturation equation, which is 0.01 low (it prints VPmax 3.33 where Murphy & Koop have 3.34).
      expect(Math.abs(air.vapourPressure / 100 - row.number('VPact_mbar'))).toBeLessThanOrEqual(0.02);
      expect(
        Math.abs((air.dewPoint ?? Number.NaN) - ZERO_CELSIUS_K - row.number('Tdew_degC')),
      ).toBeLessThanOrEqual(0.03);
    }
  });
});

describe('humidity in the air', () => {
  it('takes more oxygen than density away: 20 °C saturated is 0.87 % lighter, with 2.32 % less dry air', () => {
    // CIPM-2007 computed independently at 1013.25 hPa: percent from dry to saturated, ±0.01. The dry-air column
    // counts molecules; per volume it is up to 0.03 points less, since moist air is a little more compressible.
    for (const [t, lighter, lessDry] of [
      [0, 0.227, 0.61],
      [10, 0.457, 1.22],
      [20, 0.869, 2.32],
      [30, 1.577, 4.21],
      [40, 2.739, 7.32],
    ] as const) {
      const dry = airOf(t, station(1013.25), relative(0));
      const full = airOf(t, station(1013.25), relative(1));
      expect((1 - full.density / dry.density) * 100).toBeCloseTo(lighter, 2);
      expect(Math.abs(full.vapourMoleFraction * 100 - lessDry)).toBeLessThanOrEqual(0.01);
      expect(Math.abs((1 - full.dryDensity / dry.dryDensity) * 100 - lessDry)).toBeLessThanOrEqual(0.03);
    }
  });

  it('is noise in the cold: 20 points at -10 °C move density by 0.02 %', () => {
    // Computed independently at 985 hPa, 80 %.
    const at = (h: number) => airOf(-10, station(985), relative(h)).density;
    expect((at(1) / at(0.8) - 1) * 100).toBeCloseTo(-0.02, 2);
  });
});
