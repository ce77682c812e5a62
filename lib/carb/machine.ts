import type { Air } from '@/lib/air/air';
import type { KelvinDifference, Metre, Ratio, Watt } from '@/lib/units/quantity';

/**
 * What the number stamped on a jet means: `flow`, proportional to flow and so to area; `bore`, hundredths of a
 * millimetre of diameter, so area goes with its square; `list`, the person's own table of relative areas.
 */
export type JetMarking =
  | { readonly kind: 'flow' }
  | { readonly kind: 'bore' }
  | { readonly kind: 'list'; readonly jets: readonly { readonly size: number; readonly area: number }[] };

export type BoxEntry = { readonly size: number; readonly count: number };
/** The main jets a person owns. */
export type Box = readonly BoxEntry[];

export type Carburettor = { readonly main: number };

/**
 * An adjustable fuel circuit turned from outside. Positions are whole numbers from `lowest` to `highest`;
 * each position up adds `richerPerPosition` of fuel.
 */
export type Trim = {
  readonly lowest: number;
  readonly highest: number;
  readonly baseline: number;
  readonly richerPerPosition: Ratio;
};

/**
 * How far mains move with pressure and temperature, as exponents: 1/2 is the orifice law, 1 is area proportional to
 * density. Bivariate normal belief.
 */
export type Response = {
  readonly pressureExponent: number;
  readonly temperatureExponent: number;
  readonly pressureSd: number;
  readonly temperatureSd: number;
  readonly correlation: number;
};

/** What set the response, for the label beside it. */
export type ResponseOrigin = 'prior' | 'chart' | 'log' | 'chart-and-log' | 'typed';

export type Limits = {
  /** Drift below minus this is lean; positive, e.g. 0.02. */
  readonly lean: Ratio;
  /** Drift above this is too rich; positive. */
  readonly rich: Ratio;
  /** Highest accepted chance of being lean in a run, e.g. 0.05. */
  readonly risk: Ratio;
};

export type ScrewKind = 'fuel' | 'air';

export type Pilot = {
  readonly jet: number;
  /** The pilot jets owned, sorted or not; may include the one fitted. */
  readonly jets: readonly number[];
  readonly screw: ScrewKind;
  /** Turns out at the baseline. */
  readonly turns: number;
  readonly leastTurns: number;
  readonly mostTurns: number;
  /** Turns of the screw worth one pilot size; common practice about 1.25, no source. */
  readonly turnsPerSize: number;
  /** Fuel change of one pilot size; about 6 %. */
  readonly richerPerSize: Ratio;
};

export type Needle = {
  /** Clip groove from the top, 1 = leanest. */
  readonly groove: number;
  readonly grooves: number;
  readonly richerPerGroove: Ratio;
};

/** Option: let cold fuel be denser. Off by default, since viscosity takes about as much back. */
export type FuelDensityOption = {
  /** Fuel temperature minus ambient at the run. */
  readonly offset: KelvinDifference;
  /** Fuel temperature at the baseline [K]. */
  readonly baselineTemperature: number;
};

/** How far the right jet area stood from the baseline's own in the baseline's air, and how sure that is. Logs of area. */
export type BaselineShift = { readonly log: number; readonly sd: number };

/**
 * What verdicts of one night ask for beyond the baseline: by how much more area each carburettor wants (logs, none below
 * 0), and the run that said so last.
 */
export type Tonight = { readonly logAreas: readonly number[]; readonly run: string };

/** Where a baseline's pressure was measured, null where not told, and whether a person has stood by its kind. */
export type BaselinePressure = { readonly elevation: Metre | null; readonly confirmed: boolean };

export type Machine = {
  readonly name: string;
  readonly carburettors: readonly Carburettor[];
  readonly marking: JetMarking;
  /** The person was asked whether the jets are really marked so, and said yes. */
  readonly markingSure?: boolean;
  readonly box: Box;
  readonly baselineAir: Air;
  /** What else was said of the baseline's pressure; absent where nothing is known and nothing is to be asked. */
  readonly baselinePressure?: BaselinePressure;
  /** Air at the carburettor minus ambient air, now. */
  readonly intakeOffset: KelvinDifference;
  /** The same when the baseline was proven. */
  readonly baselineIntakeOffset: KelvinDifference;
  readonly trim: Trim | null;
  readonly limits: Limits;
  readonly response: Response;
  readonly pilot: Pilot | null;
  readonly needle: Needle | null;
  readonly fuelDensity: FuelDensityOption | null;
  /** k of power = 1 - k drift², rich side; 2 by default (an assumption). */
  readonly richPowerLoss: number;
  /** Power a swap must save, added up over the runs it serves; null where the person named none. */
  readonly swapWorth: Ratio | null;
  /** null where it was not given. */
  readonly ratedPower: Watt | null;
  /** From how the baseline was judged and what hardware changed since; absent where the baseline is right as it is. */
  readonly baselineShift?: BaselineShift;
  /** What verdicts of tonight ask for beyond the baseline; absent where there is nothing. */
  readonly tonight?: Tonight;
};

/** Jets in every carburettor and the trim position: what is fitted, or could be. */
export type Setting = { readonly mains: readonly number[]; readonly trim: number | null };
