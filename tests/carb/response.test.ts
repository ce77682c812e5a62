import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DEFAULT_RESPONSE,
  type Exponents,
  logAreaOf,
  logIdealArea,
  logIdealSd,
  machineAirShift,
  ORIFICE_LAW,
} from '@/lib/carb/response';
import { celsiusToKelvin } from '@/lib/units/convert';
import { kelvinDifference } from '@/lib/units/quantity';
import { airOf, raceMachine } from '../support/race-machine';

/** Jet area in proportion to density: the richest end of trade practice. common practice, no source */
const DENSITY_LAW: Exponents = { pressure: 1, temperature: 1 };

describe('how far mains move', () => {
  it('the prior is 0.65 ± 0.12 on each exponent, and the two go together', () => {
    expect(DEFAULT_RESPONSE).toEqual({
      pressureExponent: 0.65,
      temperatureExponent: 0.65,
      pressureSd: 0.12,
      temperatureSd: 0.12,
      correlation: 0.7,
    });
  });

  it('with exponents of one half it is the orifice law', () => {
    const machine = raceMachine();
    const air = airOf(-25, 940, 0.8);
    expect(logIdealArea(machine, air, ORIFICE_LAW)).toBe(machineAirShift(machine, air).need);
  });

  it('with exponents of one it is density itself, but for the compressibility of air', () => {
    const machine = raceMachine({ baselineAir: airOf(15, 1013.25) });
    const air = airOf(-25, 850);
    const density = Math.log(air.density / machine.baselineAir.density);
    // Z moves by under 0.1 % between the two airs, and half of that enters.
    expect(Math.abs(logIdealArea(machine, air, DENSITY_LAW) - density)).toBeLessThan(5e-4);
  });

  it('a hand-worked step: 20 °C to -20 °C and 1000 hPa to 900 hPa with 0.8 and 0.6', () => {
    const shift = { need: 0.02, pressure: Math.log(0.9), cold: Math.log(293.15 / 253.15) };
    // 0.02 + 0.3 · (−0.1053605) + 0.1 · 0.1467022 = 0.0030621
    expect(logAreaOf(shift, { pressure: 0.8, temperature: 0.6 })).toBeCloseTo(0.0030621, 6);
  });

  it('colder or heavier air never asks for a smaller jet, whatever the exponents of practice', () => {
    const exponent = fc.double({ min: 0.5, max: 1, noNaN: true });
    const celsius = fc.double({ min: -40, max: 35, noNaN: true });
    const machine = raceMachine();
    fc.assert(
      fc.property(
        exponent,
        exponent,
        celsius,
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        (n, m, t, more) => {
          const exponents = { pressure: n, temperature: m };
          const here = logIdealArea(machine, airOf(t, 950, 0.5), exponents);
          expect(logIdealArea(machine, airOf(t - more, 950, 0.5), exponents)).toBeGreaterThan(here);
          expect(logIdealArea(machine, airOf(t, 950 + more, 0.5), exponents)).toBeGreaterThan(here);
        },
      ),
    );
  });

  it('an engine that drew warm air at its baseline and draws cold air now needs more', () => {
    const warmThen = raceMachine({ baselineIntakeOffset: kelvinDifference(20) });
    expect(logIdealArea(warmThen, warmThen.baselineAir)).toBeGreaterThan(0.03);
    const warmBoth = raceMachine({
      baselineIntakeOffset: kelvinDifference(20),
      intakeOffset: kelvinDifference(20),
    });
    expect(logIdealArea(warmBoth, warmBoth.baselineAir)).toBe(0);
  });

  it('fuel density counts only when asked for, and takes a little off the jet in the cold', () => {
    const option = { offset: kelvinDifference(0), baselineTemperature: celsiusToKelvin(-10) };
    const cold = airOf(-25, 990, 0.7);
    const held = logIdealArea(raceMachine(), cold);
    const counted = logIdealArea(raceMachine({ fuelDensity: option }), cold);
    // ASTM D1250: 15 K colder petrol is about 1.8 % denser, and half of it enters.
    expect(held - counted).toBeGreaterThan(0.008);
    expect(held - counted).toBeLessThan(0.01);
  });

  it('a baseline found a size lean moves every ideal by that size', () => {
    const machine = raceMachine();
    const air = airOf(3, 960, 0.4);
    const moved = raceMachine({ baselineShift: { log: 0.024, sd: 0.006 } });
    expect(logIdealArea(moved, air) - logIdealArea(machine, air)).toBeCloseTo(0.024, 12);
  });
});

describe('how sure the ideal is', () => {
  it("is quite sure in the baseline's own air and less so far from it", () => {
    const machine = raceMachine();
    expect(logIdealSd(machine, machine.baselineAir)).toBe(0);
    expect(logIdealSd(machine, airOf(-30, 990))).toBeGreaterThan(logIdealSd(machine, airOf(-20, 990)));
  });

  it("adds the exponents' doubts with their correlation, and the baseline's own", () => {
    const machine = raceMachine({ baselineShift: { log: 0, sd: 0.006 } });
    const air = airOf(-30, 900);
    const u = Math.log(900 / 990);
    const v = Math.log(263.15 / 243.15);
    const variance = 0.12 ** 2 * (u * u + v * v + 2 * 0.7 * u * v) + 0.006 ** 2;
    expect(logIdealSd(machine, air)).toBeCloseTo(Math.sqrt(variance), 12);
  });
});
