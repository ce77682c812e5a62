import { ZERO_CELSIUS_K } from '@/lib/units/convert';
import { type Density, density, type Kelvin, type Pascal, type Ratio, ratio } from '@/lib/units/quantity';

/** Constants of CIPM-2007. Source: Picard et al., Metrologia 45 (2008) 149, section 2 and appendix A. */
export const CIPM = {
  /** Molar mass of dry air with 400 µmol/mol of CO2 [kg/mol]. */
  dryMolarMass: 28.96546e-3,
  /** Molar mass of water [kg/mol]. */
  waterMolarMass: 18.01528e-3,
  /** Molar gas constant [J/(mol K)], CODATA 2006. */
  gasConstant: 8.314472,
  alpha: 1.00062,
  beta: 3.14e-8,
  gamma: 5.6e-7,
  a0: 1.58123e-6,
  a1: -2.9331e-8,
  a2: 1.1043e-10,
  b0: 5.707e-6,
  b1: -2.051e-8,
  c0: 1.9898e-4,
  c1: -2.376e-6,
  d: 1.83e-11,
  e: -0.765e-8,
} as const;

/** Moist air by composition: what density depends on. */
export type MoistState = {
  readonly temperature: Kelvin;
  /** Station pressure. */
  readonly pressure: Pascal;
  readonly vapourMoleFraction: Ratio;
};

/**
 * Enhancement factor: how much more vapour real air holds at saturation than a vacuum would.
 *
 *     f = α + β p + γ t²
 *
 * p [Pa], t [°C]. Source: Picard et al., Metrologia 45 (2008) 149, eq. A1.2.
 */
export function enhancementFactor(temperature: Kelvin, pressure: Pascal): Ratio {
  const t = temperature - ZERO_CELSIUS_K;
  return ratio(CIPM.alpha + CIPM.beta * pressure + CIPM.gamma * t * t);
}

/**
 * Mole fraction of water vapour.
 *
 *     x_v = f e / p,   e = RH e_w(T)
 *
 * Source: Picard et al., Metrologia 45 (2008) 149, eq. A1.3 (h p_sv written as e).
 */
export function vapourMoleFraction(air: {
  readonly temperature: Kelvin;
  readonly pressure: Pascal;
  readonly vapourPressure: Pascal;
}): Ratio {
  return ratio((enhancementFactor(air.temperature, air.pressure) * air.vapourPressure) / air.pressure);
}

/**
 * Compressibility factor of moist air.
 *
 *     Z = 1 - p/T [a0 + a1 t + a2 t² + (b0 + b1 t) x + (c0 + c1 t) x²] + p²/T² (d + e x²)
 *
 * p [Pa], T [K], t [°C], x mole fraction. Source: Picard et al., Metrologia 45 (2008) 149, eq. A1.4. Stated for
 * 15 to 27 °C and 600 to 1100 hPa; against the virial values of ASHRAE RP-1485 it is within 0.012 % at -60 °C.
 */
export function compressibility({ temperature, pressure, vapourMoleFraction: x }: MoistState): Ratio {
  const t = temperature - ZERO_CELSIUS_K;
  const pT = pressure / temperature;
  const { a0, a1, a2, b0, b1, c0, c1, d, e } = CIPM;
  return ratio(
    1 -
      pT * (a0 + a1 * t + a2 * t * t + (b0 + b1 * t) * x + (c0 + c1 * t) * x * x) +
      pT * pT * (d + e * x * x),
  );
}

/** Moles of moist air times the molar mass of dry air, per volume [kg/m³]: p M_a / (Z R T). */
function dryEquivalent(state: MoistState): number {
  const z = compressibility(state);
  return (state.pressure * CIPM.dryMolarMass) / (z * CIPM.gasConstant * state.temperature);
}

/**
 * Density of moist air [kg/m³].
 *
 *     ρ = p M_a / (Z R T) [1 - x_v (1 - M_v/M_a)]
 *
 * Source: CIPM-2007, Picard et al., Metrologia 45 (2008) 149, eq. 1.
 */
export function moistDensity(state: MoistState): Density {
  const lighter = 1 - CIPM.waterMolarMass / CIPM.dryMolarMass;
  return density(dryEquivalent(state) * (1 - state.vapourMoleFraction * lighter));
}

/**
 * Mass of dry air, the part that burns fuel, per volume of moist air [kg/m³].
 *
 *     ρ_dry = p M_a / (Z R T) (1 - x_v)
 */
export function dryDensity(state: MoistState): Density {
  return density(dryEquivalent(state) * (1 - state.vapourMoleFraction));
}
