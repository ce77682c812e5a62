import { describe, expect, it } from 'vitest';
import { saturationOverIce, saturationOverWater } from '@/lib/air/saturation';
import { celsiusToKelvin } from '@/lib/units/convert';
import { kelvin } from '@/lib/units/quantity';
import { expectWithin } from '../support/air';
import { referenceTable } from '../support/reference-table';

const rows = referenceTable('saturation-vapour-pressure.csv');
const water = (celsius: number) => saturationOverWater(celsiusToKelvin(celsius));
const ice = (celsius: number) => saturationOverIce(celsiusToKelvin(celsius));

describe('saturation pressure over water', () => {
  it('at and above 0 °C is within 0.2 % of six published equations, and 0.02 % of the IAPWS one', () => {
    // 0.2 %: what the older equations (Sonntag, Hyland & Wexler, Bolton to 40 °C) differ by. Goff & Gratch is within
    // 0.1 %. The WMO-No. 8 Magnus equation is known to be 0.3 % low at 20 to 30 °C and is left out.
    const warm = rows.filter((row) => row.number('t_C') >= 0 && row.number('t_C') <= 40);
    expect(warm.length).toBe(9);
    for (const row of warm) {
      const pressure = water(row.number('t_C'));
      expectWithin(pressure, row.number('liq_IAPWS_WagnerPruss_Pa(extrap<0.01C)'), 2e-4);
      expectWithin(pressure, row.number('liq_CIPM_Pa'), 1e-5);
      for (const equation of [
        'liq_MurphyKoop2005_Pa',
        'liq_HylandWexler1983_Pa',
        'liq_Sonntag1994_Pa',
        'liq_GoffGratch_T=t+273.16_Pa',
        'liq_Bolton1980_Pa',
      ])
        expectWithin(pressure, row.number(equation), 2e-3);
    }
  });

  it('matches the check values of IAPWS SR1-86 (1992)', () => {
    // Values of the auxiliary equation; 2e-4 since CIPM-2007 has its own equation.
    for (const [celsius, pascals] of [
      [0.01, 611.657],
      [20, 2339.19],
      [25, 3169.82],
      [30, 4246.92],
      [40, 7385.11],
      [50, 12_352.5],
    ] as const)
      expectWithin(water(celsius), pascals, 2e-4);
    // IAPWS R7-97, table 35.
    expectWithin(saturationOverWater(kelvin(300)), 3536.58941, 2e-4);
  });

  it('below 0 °C is Murphy & Koop over supercooled water', () => {
    // Q. J. R. Meteorol. Soc. 131 (2005) 1539, eq. 10, computed independently to six digits: 1e-5.
    const cold = rows.filter((row) => row.number('t_C') < 0);
    expect(cold.length).toBe(10);
    for (const row of cold) expectWithin(water(row.number('t_C')), row.number('liq_MurphyKoop2005_Pa'), 1e-5);
    // The paper's own table C1 (from memory): five digits, 5e-5.
    expectWithin(saturationOverWater(kelvin(240)), 37.667, 5e-5);
    expectWithin(saturationOverWater(kelvin(210)), 1.2335, 5e-5);
  });

  it('agrees with the Smithsonian tables above and just below freezing', () => {
    // Smithsonian Meteorological Tables, 6th ed., tables 94 and 96 (from memory), hPa. Goff & Gratch (1946) is within
    // 0.2 % there; at -40 °C published equations differ by 0.7 %.
    for (const [celsius, hpa] of [
      [-20, 1.254],
      [0, 6.1078],
      [20, 23.373],
      [30, 42.43],
      [40, 73.777],
      [50, 123.4],
    ] as const)
      expectWithin(water(celsius) / 100, hpa, 2e-3);
  });
});

describe('saturation pressure over ice', () => {
  it('is within 0.05 % of IAPWS R14-08 (2011)', () => {
    // The two equations differ by 0.03 % at -50 °C (computed independently).
    const cold = rows.filter((row) => row.number('t_C') <= 0);
    expect(cold.length).toBe(11);
    for (const row of cold) {
      expectWithin(ice(row.number('t_C')), row.number('ice_IAPWS_R14-08_Pa'), 5e-4);
      expectWithin(ice(row.number('t_C')), row.number('ice_MurphyKoop2005_Pa'), 1e-5);
    }
    // IAPWS check value at 230 K.
    expectWithin(saturationOverIce(kelvin(230)), 8.94735, 5e-4);
  });

  it('matches the table of Murphy & Koop and an independent test of it', () => {
    // Table C1 (from memory), five digits; typhon, tests/physics/test_physics.py, at 260 K.
    expectWithin(saturationOverIce(kelvin(210)), 0.70202, 1e-5);
    expectWithin(saturationOverIce(kelvin(240)), 27.272, 2e-5);
    expectWithin(saturationOverIce(kelvin(273.15)), 611.154, 1e-6);
    expectWithin(saturationOverIce(kelvin(273.16)), 611.657, 1e-6);
    expectWithin(saturationOverIce(kelvin(260)), 195.8193457, 1e-9);
  });

  it('matches the ASHRAE handbook', () => {
    // ASHRAE Handbook Fundamentals 2017, ch. 1, table 3, in psychrolib, tests/test_psychrolib_si.py: its own 300 ppm;
    // 0.01 Pa at -60 °C, where it prints three digits.
    expect(Math.abs(ice(-60) - 1.08)).toBeLessThan(0.01);
    expectWithin(ice(-20), 103.24, 3e-4);
    expectWithin(ice(-5), 401.74, 3e-4);
    expectWithin(water(5), 872.6, 3e-4);
    expectWithin(water(25), 3169.7, 3e-4);
    expectWithin(water(50), 12_351.3, 3e-4);
  });
});

describe('water against ice', () => {
  it('differ by 5 % at -5 °C and by 47 % at -40 °C', () => {
    // Ratio of the two Murphy & Koop equations, computed independently, four digits.
    for (const [celsius, ratio] of [
      [-5, 1.0498],
      [-10, 1.1022],
      [-20, 1.2155],
      [-30, 1.34],
      [-40, 1.4724],
    ] as const)
      expectWithin(water(celsius) / ice(celsius), ratio, 1e-4);
  });

  it('meet at the triple point', () => {
    // 611.657 Pa by IAPWS. CIPM-2007 has its own equation for water: 0.02 %.
    expectWithin(water(0.01), 611.657, 2e-4);
    expectWithin(ice(0.01), 611.657, 1e-6);
  });
});
