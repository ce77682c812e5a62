import { fail, ok, type Result } from '@/lib/result/result';
import {
  type ElevationUnit,
  elevationFrom,
  type PressureUnit,
  pressureFrom,
  type TemperatureUnit,
  temperatureFrom,
} from './choice';
import { fahrenheitStepToKelvin, millimetreOfMercuryToPascal } from './convert';
import { type Entry, type EntryProblem, takeApart } from './entry-number';
import {
  type Kelvin,
  type KelvinDifference,
  kelvin,
  kelvinDifference,
  type Metre,
  metre,
  type Pascal,
  pascal,
  type Ratio,
  ratio,
} from './quantity';

/** How a quantity is read: what each unit means, and which of two readings of "1,600" makes sense. */
type Reader<Q> = {
  readonly units: Readonly<Record<string, (value: number) => Q>>;
  /** Tells 1,013 hPa (thousands) from 29,921 inHg (decimal). Ranges proper are the caller's. */
  readonly sensible: (quantity: Q) => boolean;
};

const celsius = (value: number): Kelvin => temperatureFrom(value, 'C');
const fahrenheit = (value: number): Kelvin => temperatureFrom(value, 'F');
const feet = (value: number): Metre => elevationFrom(value, 'ft');
const inches = (value: number): Pascal => pressureFrom(value, 'inHg');
const hectopascals = (value: number): Pascal => pressureFrom(value, 'hPa');

const TEMPERATURE: Reader<Kelvin> = {
  units: {
    f: fahrenheit,
    degf: fahrenheit,
    fahrenheit,
    c: celsius,
    degc: celsius,
    celsius,
    k: kelvin,
    kelvin,
  },
  sensible: (t) => t > 150 && t < 400,
};

const TEMPERATURE_STEP: Reader<KelvinDifference> = {
  units: {
    f: fahrenheitStepToKelvin,
    degf: fahrenheitStepToKelvin,
    fahrenheit: fahrenheitStepToKelvin,
    c: kelvinDifference,
    degc: kelvinDifference,
    celsius: kelvinDifference,
    k: kelvinDifference,
    kelvin: kelvinDifference,
  },
  sensible: (step) => Math.abs(step) < 150,
};

const PRESSURE: Reader<Pascal> = {
  units: {
    inhg: inches,
    '"hg': inches,
    in: inches,
    '"': inches,
    hpa: hectopascals,
    mbar: hectopascals,
    mb: hectopascals,
    kpa: (value) => pressureFrom(value, 'kPa'),
    pa: pascal,
    bar: (value) => pressureFrom(value * 100, 'kPa'),
    mmhg: millimetreOfMercuryToPascal,
  },
  sensible: (p) => p > 30_000 && p < 120_000,
};

/** Too short to say in a table that a pressure is meant. */
const UNCLEAR_IN_TABLES = ['in', '"', 'pa', 'bar'];

/** How tables write units of pressure, in lower case. */
export const PRESSURE_UNIT_NAMES: readonly string[] = Object.keys(PRESSURE.units).filter(
  (name) => !UNCLEAR_IN_TABLES.includes(name),
);

const ELEVATION: Reader<Metre> = {
  units: {
    m: metre,
    metre,
    metres: metre,
    meter: metre,
    meters: metre,
    ft: feet,
    feet,
    foot: feet,
    "'": feet,
  },
  // Nobody gives the height of a lake to the millimetre: "1,600 m" and "1.600 m" are both 1600 m.
  sensible: (h) => Math.abs(h) >= 300,
};

function choose<Q>(entry: Entry, toQuantity: (value: number) => Q, sensible: (q: Q) => boolean): Q {
  const { asDecimal, asThousands } = entry;
  const decimal = asDecimal === null ? null : toQuantity(asDecimal);
  const thousands = asThousands === null ? null : toQuantity(asThousands);
  if (decimal !== null && (thousands === null || sensible(decimal) || !sensible(thousands))) return decimal;
  if (thousands !== null) return thousands;
  throw new Error('an entry has at least one reading');
}

function read<Q>(text: string, reader: Reader<Q>, bare: (value: number) => Q): Result<Q, EntryProblem> {
  const entry = takeApart(text);
  if (!entry.ok) return entry;
  const { unit } = entry.value;
  const toQuantity = unit === '' ? bare : Object.hasOwn(reader.units, unit) ? reader.units[unit] : undefined;
  if (toQuantity === undefined) return fail({ code: 'unknown-unit', unit });
  try {
    return ok(choose(entry.value, toQuantity, reader.sensible));
  } catch {
    // Only the check for finite numbers throws: 1e308 bar overflows in pascals.
    return fail({ code: 'too-large', text });
  }
}

/** A temperature as typed: "-12.5", "−12,5 °C", "+18F", "18-". The unit counts where none is typed. */
export function readTemperature(text: string, unit: TemperatureUnit): Result<Kelvin, EntryProblem> {
  return read(text, TEMPERATURE, (value) => temperatureFrom(value, unit));
}

/** A difference of temperature as typed: "+5 °C", "50F". */
export function readTemperatureStep(
  text: string,
  unit: TemperatureUnit,
): Result<KelvinDifference, EntryProblem> {
  return read(text, TEMPERATURE_STEP, unit === 'F' ? fahrenheitStepToKelvin : kelvinDifference);
}

/** A pressure as typed: "29.92 inHg", "1,013 hPa", "101.3kPa". Which kind of pressure it is, is asked apart. */
export function readPressure(text: string, unit: PressureUnit): Result<Pascal, EntryProblem> {
  return read(text, PRESSURE, (value) => pressureFrom(value, unit));
}

/** A height as typed: "1,600 m", "5250ft". */
export function readElevation(text: string, unit: ElevationUnit): Result<Metre, EntryProblem> {
  return read(text, ELEVATION, (value) => elevationFrom(value, unit));
}

/** A percentage as typed, as a ratio: "80", "80 %" -> 0.8. */
export function readPercent(text: string): Result<Ratio, EntryProblem> {
  const percent = (value: number): Ratio => ratio(value / 100);
  return read(text, { units: { '%': percent }, sensible: (r) => Math.abs(r) <= 10 }, percent);
}

/** A bare number as typed. "1,600" is refused as unclear: there is no unit to tell 1.6 from 1600. */
export function readNumber(text: string): Result<number, EntryProblem> {
  const entry = takeApart(text);
  if (!entry.ok) return entry;
  const { asDecimal, asThousands, unit } = entry.value;
  if (unit !== '') return fail({ code: 'unknown-unit', unit });
  if (asDecimal !== null && asThousands !== null && asDecimal !== asThousands && text.includes(','))
    return fail({ code: 'ambiguous-mark', text, decimal: asDecimal, thousands: asThousands });
  return ok(asDecimal ?? asThousands ?? Number.NaN);
}
