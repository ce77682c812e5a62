declare const unit: unique symbol;

/** A number that carries its unit in its type. One unit per dimension is used inside the core (SI). */
export type Quantity<U extends string> = number & { readonly [unit]: U };

/** Thermodynamic temperature [K]. */
export type Kelvin = Quantity<'K'>;
/** Temperature difference [K]; not a temperature. */
export type KelvinDifference = Quantity<'ΔK'>;
/** Pressure [Pa]. Every name says which kind: station, altimeter setting or sea level. */
export type Pascal = Quantity<'Pa'>;
/** Length or height [m]. */
export type Metre = Quantity<'m'>;
/** Density [kg/m³]. */
export type Density = Quantity<'kg/m3'>;
/** Dimensionless ratio, 1 = 100 %. */
export type Ratio = Quantity<'1'>;
/** Duration [s]. */
export type Second = Quantity<'s'>;
/** Speed [m/s]. */
export type SpeedMs = Quantity<'m/s'>;
/** Power [W]. */
export type Watt = Quantity<'W'>;

/** A quantity that is not a finite number is a programming error, never a result. */
function finite<Q extends number>(value: number, what: string): Q {
  if (!Number.isFinite(value)) throw new RangeError(`${what} must be a finite number, got ${value}`);
  return value as Q;
}

export const kelvin = (value: number): Kelvin => finite<Kelvin>(value, 'temperature');
export const kelvinDifference = (value: number): KelvinDifference =>
  finite<KelvinDifference>(value, 'temperature difference');
export const pascal = (value: number): Pascal => finite<Pascal>(value, 'pressure');
export const metre = (value: number): Metre => finite<Metre>(value, 'length');
export const density = (value: number): Density => finite<Density>(value, 'density');
export const ratio = (value: number): Ratio => finite<Ratio>(value, 'ratio');
export const second = (value: number): Second => finite<Second>(value, 'duration');
export const speedMs = (value: number): SpeedMs => finite<SpeedMs>(value, 'speed');
export const watt = (value: number): Watt => finite<Watt>(value, 'power');
