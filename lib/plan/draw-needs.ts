import { type Causes, causesAt, causesSd, type MachineNeed } from './machine-need';
import type { NeedCurve } from './need-curve';
import { type RunOdds, U0 } from './run-odds';
import { INPUT, type Window } from './scenarios';
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
type Store = {
  readonly base: Float64Array;
  readonly slope: Float64Array;
  readonly perIdeal: Float64Array;
  readonly u: Float64Array;
  readonly highest: Float64Array;
};

type Place = {
  readonly machine: MachineNeed;
  readonly curve: NeedCurve;
  readonly window: Window;
  readonly inputs: Inputs;
  readonly draws: number;
  readonly run: number;
  /** Where this run starts in the store. */
  readonly from: number;
};

/** What one draw fixes: where its five inputs stand once moved along the direction to u = U0. */
type Moved = {
  readonly u: number;
  readonly temperature: number;
  readonly pressure: number;
  /** n_p − ½, n_T − ½ and the baseline's shift. */
  readonly np: number;
  readonly nT: number;
  readonly shift: number;
};

function moveDraw({ machine, inputs }: Place, unit: Causes, s: number): Moved {
  const { response } = machine;
  const [t, p] = [inputs.temperature[s]!, inputs.pressure[s]!];
  const [r, o, b] = [inputs.response[s]!, inputs.responseOther[s]!, inputs.baseline[s]!];
  const u =
    unit.temperature * t + unit.pressure * p + unit.response * r + unit.responseOther * o + unit.baseline * b;
  const k = U0 - u;
  const first = r + k * unit.response;
  const second = o + k * unit.responseOther;
  const across = Math.sqrt(1 - response.correlation ** 2);
  return {
    u,
    temperature: t + k * unit.temperature,
    pressure: p + k * unit.pressure,
    np: response.pressureExponent - 0.5 + response.pressureSd * first,
    nT:
      response.temperatureExponent -
      0.5 +
      response.temperatureSd * (response.correlation * first + across * second),
    shift: machine.shift + machine.shiftSd * (b + k * unit.baseline),
  };
}

/** Writes one run's lines into the store: L and dL/du of every draw and instant at u = U0. */
function fillRun(place: Place, store: Store): RunOdds {
  const { machine, curve, window, draws, run, from } = place;
  const { response } = machine;
  const { temperature: warmer, lnPressure: higher } = window.draws;
  const unit = steepest(causesAt(machine, { curve, track: window.track, i: window.centre }));
  const instants = window.track.at.length;
  const across = Math.sqrt(1 - response.correlation ** 2);
  const alongPressure = response.pressureSd * unit.response;
  const alongCold =
    response.temperatureSd * (response.correlation * unit.response + across * unit.responseOther);
  const alongBaseline = machine.shiftSd * unit.baseline;
  for (let s = 0; s < draws; s++) {
    const moved = moveDraw(place, unit, s);
    const back = moved.u - U0;
    let highest = Number.NEGATIVE_INFINITY;
    for (let j = 0; j < instants; j++) {
      const at = s * instants + j;
      const dT = warmer.level[j]! * moved.temperature + warmer.rest[at]!;
      const dq = higher.level[j]! * moved.pressure + higher.rest[at]!;
      // ln(T0/T) to second order in δT/T; the third is below 1e-5.
      const y = dT / curve.temperature[j]!;
      const cold = machine.lnTemperature - curve.lnTemperature[j]! - y + (y * y) / 2;
      const lnPressure = curve.lnPressure[j]! - machine.lnPressure + dq;
      const need = curve.level[j]! - machine.need + dT * (curve.slope[j]! + curve.bend[j]! * dT);
      const base =
        need + curve.pressureSlope[j]! * dq + moved.np * lnPressure + moved.nT * cold + moved.shift;
      const perKelvin =
        curve.slope[j]! + 2 * curve.bend[j]! * dT - (moved.nT * (1 - y)) / curve.temperature[j]!;
      const slope =
        perKelvin * warmer.level[j]! * unit.temperature +
        (curve.pressureSlope[j]! + moved.np) * higher.level[j]! * unit.pressure +
        alongPressure * lnPressure +
        alongCold * cold +
        alongBaseline;
      store.base[from + at] = base;
      store.slope[from + at] = slope;
      store.perIdeal[from + at] = Math.exp(-base - slope * back);
      highest = Math.max(highest, base + slope * back);
    }
    store.u[run * draws + s] = moved.u;
    store.highest[run * draws + s] = highest;
  }
  return {
    ...store,
    draws,
    instants,
    from,
    drawFrom: run * draws,
    ...boundsOf(store, { from, draws, instants }),
  };
}

/** Bounds of the lines, to tell certainties without an integral. */
function boundsOf(
  store: Store,
  run: { readonly from: number; readonly draws: number; readonly instants: number },
) {
  const { from, draws, instants } = run;
  let [highestBase, surelyReached, steepestSlope, flattest] = [-Infinity, Infinity, 0, Infinity];
  let [lowestBase, surelyUndercut, mostPerIdeal] = [Infinity, -Infinity, 0];
  for (let s = 0; s < draws; s++) {
    let [low, high] = [Infinity, -Infinity];
    for (let i = from + s * instants; i < from + (s + 1) * instants; i++) {
      const base = store.base[i]!;
      const slope = store.slope[i]!;
      if (base < low) low = base;
      if (base > high) high = base;
      if (slope < flattest) flattest = slope;
      if (Math.abs(slope) > steepestSlope) steepestSlope = Math.abs(slope);
      if (store.perIdeal[i]! > mostPerIdeal) mostPerIdeal = store.perIdeal[i]!;
    }
    if (high > highestBase) highestBase = high;
    if (high < surelyReached) surelyReached = high;
    if (low < lowestBase) lowestBase = low;
    if (low > surelyUndercut) surelyUndercut = low;
  }
  const lowestIdeal = -Math.log(mostPerIdeal);
  const risesOnly = flattest >= 0;
  return { highestBase, surelyReached, lowestBase, surelyUndercut, steepestSlope, risesOnly, lowestIdeal };
}

/** The odds of a machine's need in every window of the night. */
export function oddsOfRuns(given: {
  readonly machine: MachineNeed;
  readonly curves: readonly NeedCurve[];
  readonly windows: readonly Window[];
  readonly normals: Normals;
}): readonly RunOdds[] {
  const { machine, curves, windows, normals } = given;
  const { draws } = normals;
  const starts = [0];
  for (const { track } of windows) starts.push(starts.at(-1)! + draws * track.at.length);
  const size = starts.at(-1)!;
  const store = {
    base: new Float64Array(size),
    slope: new Float64Array(size),
    perIdeal: new Float64Array(size),
    u: new Float64Array(draws * windows.length),
    highest: new Float64Array(draws * windows.length),
  };
  const inputs = inputsOf(normals);
  return windows.map((window, run) =>
    fillRun({ machine, curve: curves[run]!, window, inputs, draws, run, from: starts[run]! }, store),
  );
}

/** L of every draw through the whole night, at [s * instants + j]. */
export function drawnIdeals(given: {
  readonly machine: MachineNeed;
  readonly curve: NeedCurve;
  readonly window: Window;
  readonly normals: Normals;
}): Float64Array {
  const { machine, curve, window, normals } = given;
  const place = { machine, curve, window, inputs: inputsOf(normals), draws: normals.draws, run: 0, from: 0 };
  const still: Causes = { temperature: 0, pressure: 0, response: 0, responseOther: 0, baseline: 0 };
  const { temperature: warmer, lnPressure: higher } = window.draws;
  const instants = window.track.at.length;
  const level = curve.level.map((need) => need - machine.need);
  const perKelvin = curve.temperature.map((kelvins) => 1 / kelvins);
  const ideals = new Float64Array(normals.draws * instants);
  for (let s = 0; s < normals.draws; s++) {
    const drawn = moveDraw(place, still, s);
    for (let j = 0; j < instants; j++) {
      const at = s * instants + j;
      const dT = warmer.level[j]! * drawn.temperature + warmer.rest[at]!;
      const dq = higher.level[j]! * drawn.pressure + higher.rest[at]!;
      const y = dT * perKelvin[j]!;
      const cold = machine.lnTemperature - curve.lnTemperature[j]! - y + (y * y) / 2;
      ideals[at] =
        level[j]! +
        dT * (curve.slope[j]! + curve.bend[j]! * dT) +
        curve.pressureSlope[j]! * dq +
        drawn.np * (curve.lnPressure[j]! - machine.lnPressure + dq) +
        drawn.nT * cold +
        drawn.shift;
    }
  }
  return ideals;
}
