import psychrolib from 'psychrolib';
import { fillDensities } from '@/lib/air/batch';
import { ZERO_CELSIUS_K } from '@/lib/units/convert';
import { median, tell, times } from './outcome';

/** Air states per second against psychrolib, the psychrometrics library, on the same states in the same run. */
const STATES = 48 * 64;
const ROUNDS = 400;
const WANTED_TIMES = 15;

psychrolib.SetUnitSystem(psychrolib.SI);

const celsius = new Float64Array(STATES);
const input = {
  temperature: new Float64Array(STATES),
  pressure: new Float64Array(STATES),
  relativeHumidity: new Float64Array(STATES),
};
let seed = 20_270_116;
const next = () => {
  seed = (seed * 16_807) % 2_147_483_647;
  return seed / 2_147_483_647;
};
for (let i = 0; i < STATES; i++) {
  celsius[i] = -40 + 80 * next();
  input.temperature[i] = celsius[i]! + ZERO_CELSIUS_K;
  input.pressure[i] = 70_000 + 34_000 * next();
  input.relativeHumidity[i] = next();
}
const output = { density: new Float64Array(STATES), dryDensity: new Float64Array(STATES) };
const peer = new Float64Array(STATES);

function peerDensities(): void {
  for (let i = 0; i < STATES; i++) {
    const t = celsius[i]!;
    const p = input.pressure[i]!;
    peer[i] = psychrolib.GetMoistAirDensity(
      t,
      psychrolib.GetHumRatioFromRelHum(t, input.relativeHumidity[i]!, p),
      p,
    );
  }
}

/** Median of several rounds, taken in turn so that a busy machine slows both alike [ns per state]. */
const taken = { ours: [] as number[], peer: [] as number[] };
for (let round = 0; round < ROUNDS; round++) {
  const start = performance.now();
  fillDensities(input, output);
  const between = performance.now();
  peerDensities();
  taken.ours.push(((between - start) * 1e6) / STATES);
  taken.peer.push(((performance.now() - between) * 1e6) / STATES);
}
const ours = median(taken.ours);
const theirs = median(taken.peer);
const worst = output.density.reduce((most, rho, i) => Math.max(most, Math.abs(rho / peer[i]! - 1)), 0);

tell({
  what: 'one air state, density and dry density',
  ours: `${ours.toFixed(0)} ns (CIPM-2007)`,
  peer: `psychrolib ${theirs.toFixed(0)} ns (ideal gas, density alone), at most ${(worst * 100).toFixed(2)} % apart`,
  ratio: `${times(theirs / ours)} as fast`,
  wanted: { goal: `${WANTED_TIMES} x or more`, met: theirs / ours >= WANTED_TIMES },
});
