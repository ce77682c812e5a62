import { type Causes, causesAt, causesSd, type MachineNeed } from './machine-need';
import type { NeedCurve } from './need-curve';
import { CERTAIN, type OddsBounds, type RunOdds, U0 } from './run-odds';
import { type DrawnWindow, INPUT } from './scenarios';
import type { Normals } from './stratified';

/** The five inputs that do not wander, over all draws. */
type Inputs = { readonly [cause in keyof Causes]: Float64Array };

function inputsOf(normals: Normals): Inputs {
  return {
    temperature: normals.input(INPUT.temperature),
    pressure: normals.input(INPUT.pressure),
    response: normals.input(INPUT.response),
    responseOther: normals.input(INPUT.responseOther),
    baseline: normals.input(INPUT.baseline),
  };
}

/** The direction in which L changes most, as a unit vector over the causes. */
function steepest(causes: Causes): Causes {
  const sd = causesSd(causes);
  return {
    temperature: causes.temperature / sd,
    pressure: causes.pressure / sd,
    response: causes.response / sd,
    responseOther: causes.responseOther / sd,
    baseline: causes.baseline / sd,
  };
}

/** Where the numbers of all runs are kept: one piece of memory each, run after run. */
type DrawColumns = {
  readonly base: Float64Array;
  readonly slope: Float64Array;
  readonly bend: Float64Array;
  readonly perIdeal: Float64Array;
  readonly u: Float64Array;
  readonly highest: Float64Array;
};

/** Columns for so many curves and so many draws of runs. */
export type DrawRoom = (curves: number, draws: number) => DrawColumns;

export const freshRoom: DrawRoom = (curves, draws) => ({
  base: new Float64Array(curves),
  slope: new Float64Array(curves),
  bend: new Float64Array(curves),
  perIdeal: new Float64Array(curves),
  u: new Float64Array(draws),
  highest: new Float64Array(draws),
});

/**
 * The same columns again and again, for whoever is done with one machine's odds before asking for the next one's: for a
 * field of racers new ones are a tenth of the time.
 */
export function roomUsedAgain(): DrawRoom {
  let columns = freshRoom(0, 0);
  return (curves, draws) => {
    if (columns.base.length < curves || columns.u.length < draws) columns = freshRoom(curves, draws);
    return columns;
  };
}

type Place = {
  readonly machine: MachineNeed;
  readonly curve: NeedCurve;
  readonly window: DrawnWindow;
  readonly inputs: Inputs;
  readonly moved: Moved;
  readonly draws: number;
  readonly run: number;
  /** Where this run starts in the columns. */
  readonly from: number;
};

/**
 * What each draw fixes: where its five inputs stand once moved along the direction to u = U0. Columns over the draws,
 * written anew for each run: an object for every draw was the largest part of what a plan left to be collected.
 */
type Moved = {
  readonly u: Float64Array;
  readonly temperature: Float64Array;
  readonly pressure: Float64Array;
  /** n_p − ½, n_T − ½ and the baseline's shift. */
  readonly np: Float64Array;
  readonly nT: Float64Array;
  readonly shift: Float64Array;
};

function roomForMoved(draws: number): Moved {
  const column = () => new Float64Array(draws);
  return {
    u: column(),
    temperature: column(),
    pressure: column(),
    np: column(),
    nT: column(),
    shift: column(),
  };
}

function moveDraws({ machine, inputs, draws, moved }: Place, unit: Causes): void {
  const { response } = machine;
  const across = Math.sqrt(1 - response.correlation ** 2);
  for (let s = 0; s < draws; s++) {
    const t = inputs.temperature[s]!;
    const p = inputs.pressure[s]!;
    const r = inputs.response[s]!;
    const o = inputs.responseOther[s]!;
    const b = inputs.baseline[s]!;
    const u =
      unit.temperature * t +
      unit.pressure * p +
      unit.response * r +
      unit.responseOther * o +
      unit.baseline * b;
    const k = U0 - u;
    const first = r + k * unit.response;
    const second = o + k * unit.responseOther;
    moved.u[s] = u;
    moved.temperature[s] = t + k * unit.temperature;
    moved.pressure[s] = p + k * unit.pressure;
    moved.np[s] = response.pressureExponent - 0.5 + response.pressureSd * first;
    moved.nT[s] =
      response.temperatureExponent -
      0.5 +
      response.temperatureSd * (response.correlation * first + across * second);
    moved.shift[s] = machine.shift + machine.shiftSd * (b + k * unit.baseline);
  }
}

/** What n_p, n_T and the baseline change by along u. */
function alongOf({ response, shiftSd }: MachineNeed, unit: Causes) {
  const across = Math.sqrt(1 - response.correlation ** 2);
  const turned = response.correlation * unit.response + across * unit.responseOther;
  return {
    alongPressure: response.pressureSd * unit.response,
    alongCold: response.temperatureSd * turned,
    alongBaseline: shiftSd * unit.baseline,
  };
}

/** Writes one run's curves into the store: L, dL/du and ½ d²L/du² of every draw and instant at u = U0. */
function fillRun(place: Place, columns: DrawColumns): void {
  const { machine, curve, window, moved, draws, run } = place;
  const unit = steepest(causesAt(machine, { curve, track: window.track, i: window.centre }));
  moveDraws(place, unit);
  const first = run * draws;
  columns.u.set(moved.u, first);
  columns.highest.fill(Number.NEGATIVE_INFINITY, first, first + draws);
  for (let j = 0; j < window.track.at.length; j++) fillInstant(place, columns, { unit, j });
}

/** The same at one instant in all draws: what only the instant says is read once, and not for every draw. */
function fillInstant(
  { machine, curve, window, moved, draws, run, from }: Place,
  { base: bases, slope: slopes, bend: bends, perIdeal, highest }: DrawColumns,
  { unit, j }: { readonly unit: Causes; readonly j: number },
): void {
  const { temperature: warmer, lnPressure: higher } = window.draws;
  const instants = window.track.at.length;
  const { alongPressure, alongCold, alongBaseline } = alongOf(machine, unit);
  const perKelvin = 1 / curve.temperature[j]!;
  const warmerLevel = warmer.level[j]!;
  const higherLevel = higher.level[j]!;
  const needAt = curve.level[j]! - machine.need;
  const slopeAt = curve.slope[j]!;
  const bendAt = curve.bend[j]!;
  const pressureSlope = curve.pressureSlope[j]!;
  const pressureAt = curve.lnPressure[j]! - machine.lnPressure;
  const coldAt = machine.lnTemperature - curve.lnTemperature[j]!;
  const stepT = warmerLevel * unit.temperature;
  const stepY = stepT * perKelvin;
  const stepP = higherLevel * unit.pressure;
  const bendOfStep = bendAt * stepT * stepT + alongPressure * stepP;
  for (let s = 0, at = j; s < draws; s++, at += instants) {
    const np = moved.np[s]!;
    const nT = moved.nT[s]!;
    const dT = warmerLevel * moved.temperature[s]! + warmer.rest[at]!;
    const dq = higherLevel * moved.pressure[s]! + higher.rest[at]!;
    // ln(T0/T) to second order in δT/T; the third is below 1e-5.
    const y = dT * perKelvin;
    const cold = coldAt - y + (y * y) / 2;
    const pressure = pressureAt + dq;
    const need = needAt + dT * (slopeAt + bendAt * dT) + pressureSlope * dq;
    const base = need + np * pressure + nT * cold + moved.shift[s]!;
    const rise =
      (slopeAt + 2 * bendAt * dT - nT * (1 - y) * perKelvin) * stepT +
      (pressureSlope + np) * stepP +
      alongPressure * pressure +
      alongCold * cold +
      alongBaseline;
    const curl = bendOfStep + (nT * stepY * stepY) / 2 - alongCold * stepY * (1 - y);
    const back = moved.u[s]! - U0;
    const ideal = base + back * (rise + curl * back);
    bases[from + at] = base;
    slopes[from + at] = rise;
    bends[from + at] = curl;
    perIdeal[from + at] = Math.exp(-ideal);
    if (ideal > highest[run * draws + s]!) highest[run * draws + s] = ideal;
  }
}

function oddsOfRun(place: Place, columns: DrawColumns): RunOdds {
  const { draws, run, from } = place;
  const instants = place.window.track.at.length;
  fillRun(place, columns);
  // Written out: spreading the columns here takes longer than filling it.
  return {
    draws,
    instants,
    from,
    base: columns.base,
    slope: columns.slope,
    bend: columns.bend,
    perIdeal: columns.perIdeal,
    drawFrom: run * draws,
    u: columns.u,
    highest: columns.highest,
    bounds: boundsOf(columns, { from, draws, instants }),
    known: new Map(),
  };
}

/** Bounds of the lines, to tell certainties without an integral. */
function boundsOf(
  columns: DrawColumns,
  run: { readonly from: number; readonly draws: number; readonly instants: number },
): OddsBounds {
  const { from, draws, instants } = run;
  let [highestBase, surelyReached, steepestSlope, flattest] = [-Infinity, Infinity, 0, Infinity];
  let [lowestBase, surelyUndercut, mostPerIdeal, strongestBend] = [Infinity, -Infinity, 0, 0];
  for (let s = 0; s < draws; s++) {
    let [low, high] = [Infinity, -Infinity];
    for (let i = from + s * instants; i < from + (s + 1) * instants; i++) {
      const base = columns.base[i]!;
      const slope = columns.slope[i]!;
      if (base < low) low = base;
      if (base > high) high = base;
      if (slope < flattest) flattest = slope;
      if (Math.abs(slope) > steepestSlope) steepestSlope = Math.abs(slope);
      if (Math.abs(columns.bend[i]!) > strongestBend) strongestBend = Math.abs(columns.bend[i]!);
      if (columns.perIdeal[i]! > mostPerIdeal) mostPerIdeal = columns.perIdeal[i]!;
    }
    if (high > highestBase) highestBase = high;
    if (high < surelyReached) surelyReached = high;
    if (low < lowestBase) lowestBase = low;
    if (low > surelyUndercut) surelyUndercut = low;
  }
  return {
    highestBase,
    surelyReached,
    lowestBase,
    surelyUndercut,
    steepestSlope,
    strongestBend,
    // A bend that could turn the slope within the certain range would make it fall again.
    risesOnly: flattest >= 2 * strongestBend * (CERTAIN + U0),
    lowestIdeal: -Math.log(mostPerIdeal),
  };
}

/** The odds of a machine's need in every window of the night. */
export function oddsOfRuns(given: {
  readonly machine: MachineNeed;
  readonly curves: readonly NeedCurve[];
  readonly windows: readonly DrawnWindow[];
  readonly normals: Normals;
  readonly room: DrawRoom;
}): readonly RunOdds[] {
  const { machine, curves, windows, normals, room } = given;
  const { draws } = normals;
  const starts = [0];
  for (const { track } of windows) starts.push(starts.at(-1)! + draws * track.at.length);
  const columns = room(starts.at(-1)!, draws * windows.length);
  const inputs = inputsOf(normals);
  const moved = roomForMoved(draws);
  return windows.map((window, run) =>
    oddsOfRun(
      { machine, curve: curves[run]!, window, inputs, moved, draws, run, from: starts[run]! },
      columns,
    ),
  );
}
