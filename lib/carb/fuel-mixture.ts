import { type Density, density, type Ratio, ratio } from '@/lib/units/quantity';
import { PUMP_FUEL_DENSITY } from './fuel-density';

/** Atoms of hydrogen and oxygen per atom of carbon. */
export type FuelFormula = { readonly hydrogen: number; readonly oxygen: number };

/** Petrol without ethanol as an average hydrocarbon. Source: Heywood, table D.4 (from memory). */
export const PETROL: FuelFormula = { hydrogen: 1.87, oxygen: 0 };
export const ETHANOL: FuelFormula = { hydrogen: 3, oxygen: 0.5 };

/** Ethanol at 15 °C to 20 °C [kg/m³]. Source: CRC Handbook (from memory). */
const ETHANOL_DENSITY = density(789);

/** Molar masses [g/mol]. Source: CIAAW abridged standard atomic weights. */
const CARBON = 12.011;
const HYDROGEN = 1.008;
const OXYGEN = 15.999;
/** Dry air [g/mol] and its oxygen mole fraction. Source: US Standard Atmosphere 1976, table 3. */
const AIR_MOLAR_MASS = 28.9647;
const AIR_OXYGEN = 0.20946;

/**
 * Mass of dry air that burns a unit mass of CH_yO_z completely.
 *
 *     (A/F)s = (1 + y/4 − z/2) (M_air / x_O2) / (M_C + y M_H + z M_O)
 *
 * Source: Heywood, section 3.4, combustion stoichiometry.
 */
export function stoichiometricAirFuel({ hydrogen, oxygen }: FuelFormula): number {
  const oxygenMolecules = 1 + hydrogen / 4 - oxygen / 2;
  const fuelMass = CARBON + hydrogen * HYDROGEN + oxygen * OXYGEN;
  return (oxygenMolecules * AIR_MOLAR_MASS) / AIR_OXYGEN / fuelMass;
}

/** Density of petrol with a share of ethanol by volume [kg/m³]; mixing shrinks it by under 0.2 %, which is left out. */
export function blendDensity(ethanolShare: Ratio): Density {
  return density((1 - ethanolShare) * PUMP_FUEL_DENSITY + ethanolShare * ETHANOL_DENSITY);
}

/** Stoichiometric air/fuel of petrol with a share of ethanol by volume, weighted by mass. */
export function blendAirFuel(ethanolShare: Ratio): number {
  const ethanolMass = (ethanolShare * ETHANOL_DENSITY) / blendDensity(ethanolShare);
  return (1 - ethanolMass) * stoichiometricAirFuel(PETROL) + ethanolMass * stoichiometricAirFuel(ETHANOL);
}

/**
 * Natural log of the jet area that keeps the equivalence ratio on another blend.
 *
 *     ln(A/A0) = ln((A/F)s0 / (A/F)s) − ½ ln(ρ_f/ρ_f0)
 *
 * The denser fuel brings part of what its oxygen asks for; the rest is jet.
 */
export function logFuelShift(shares: { readonly from: Ratio; readonly to: Ratio }): number {
  const airFuel = Math.log(blendAirFuel(shares.from) / blendAirFuel(shares.to));
  return airFuel - Math.log(blendDensity(shares.to) / blendDensity(shares.from)) / 2;
}

/** Pump fuel holds up to a tenth of ethanol in most places; taken where the person does not say. */
export const PUMP_ETHANOL_SHARE = ratio(0.1);
