import { describe, expect, it } from 'vitest';
import type { Air } from '@/lib/air/air';
import { evidenceOfChart, evidenceOfLog, type LogEntry } from '@/lib/carb/jet-evidence';
import { interval90, learnResponse } from '@/lib/carb/learn';
import { DEFAULT_RESPONSE, type Exponents } from '@/lib/carb/response';
import { idealSizes } from '@/tests/support/ideal-sizes';
import { airOf, raceMachine } from '../support/race-machine';

const machine = raceMachine();

/** A run with the jet its air asks for by known exponents, read as right by somebody who never errs. */
function rightRun(id: string, air: Air, exponents: Exponents): LogEntry {
  const mains = idealSizes(machine, air, exponents);
  return { id, air, setting: { mains, trim: null }, verdict: 'right', sizes: 0, judgedBy: 'wideband' };
}

const truth = { pressure: 0.9, temperature: 0.75 };
const log = [-30, -22, -15, -5, 4, 12].flatMap((celsius) =>
  [1000, 930, 840].map((hectopascal) =>
    rightRun(`${celsius}/${hectopascal}`, airOf(celsius, hectopascal, 0.6), truth),
  ),
);

describe('learning the response', () => {
  it('from nothing learns nothing, and says so', () => {
    const learned = learnResponse(machine, []);
    expect(learned.origin).toBe('prior');
    expect(learned.response.pressureExponent).toBeCloseTo(0.65, 12);
    expect(learned.response.temperatureSd).toBeCloseTo(0.12, 12);
    expect(learned.response.correlation).toBeCloseTo(0.7, 12);
    expect(learned.pressure).toMatchObject({ state: 'near-prior', why: 'no-evidence', borrowed: false });
    expect(learned.baselineShift).toBeNull();
    expect(learned.scatter).toBeNull();
  });

  it('from a wide and clean log finds both exponents', () => {
    const learned = learnResponse(machine, evidenceOfLog(machine, log));
    expect(learned.origin).toBe('log');
    expect(Math.abs(learned.response.pressureExponent - 0.9)).toBeLessThan(0.03);
    expect(Math.abs(learned.response.temperatureExponent - 0.75)).toBeLessThan(0.03);
    expect(learned.pressure).toMatchObject({ state: 'learned', why: null, borrowed: false });
    expect(learned.temperature.state).toBe('learned');
    expect(learned.pressure.low).toBeLessThan(0.9);
    expect(learned.pressure.high).toBeGreaterThan(0.9);
    expect(learned.pressure.sdLeft).toBeLessThan(0.35);
  });

  it('shows the prior beside the posterior', () => {
    expect(learnResponse(machine, evidenceOfLog(machine, log)).prior).toEqual(DEFAULT_RESPONSE);
  });

  it("does not count the machine's own earlier posterior again", () => {
    const observations = evidenceOfLog(machine, log);
    const again = { ...machine, response: learnResponse(machine, observations).response };
    expect(learnResponse(again, observations).response).toEqual(
      learnResponse(machine, observations).response,
    );
  });

  it('a log that is a size richer throughout moves the baseline, not the exponents', () => {
    const richer = log.map((run): LogEntry => ({ ...run, verdict: 'lean', sizes: 1 }));
    const plain = learnResponse(machine, evidenceOfLog(machine, log));
    const moved = learnResponse(machine, evidenceOfLog(machine, richer));
    // The prior holds the exponents back a little; what is left of that in the level is under 0.1 size.
    expect(Math.abs(plain.baselineShift!.log)).toBeLessThan(0.0024);
    expect(moved.baselineShift!.log).toBeGreaterThan(0.015);
    expect(Math.abs(moved.response.pressureExponent - plain.response.pressureExponent)).toBeLessThan(0.07);
  });

  it('a chart of quite other jets still teaches how much they move', () => {
    const cells = log.map(({ id, air, setting }) => ({ id, air, main: setting.mains[0]! * 0.7 }));
    const learned = learnResponse(machine, evidenceOfChart(machine, cells));
    expect(learned.origin).toBe('chart');
    expect(Math.abs(learned.response.pressureExponent - 0.9)).toBeLessThan(0.05);
    expect(learned.baselineShift).toBeNull();
  });

  it('chart and log together are named so, with a level each', () => {
    const cells = log
      .slice(0, 6)
      .map(({ id, air, setting }) => ({ id: `c${id}`, air, main: setting.mains[0]! * 0.8 }));
    const both = [...evidenceOfChart(machine, cells), ...evidenceOfLog(machine, log)];
    const learned = learnResponse(machine, both);
    expect(learned.origin).toBe('chart-and-log');
    expect(learned.baselineShift!.log).toBeCloseTo(0, 2);
    expect(learned.entries.filter((entry) => entry.group === 'chart')).toHaveLength(6);
  });

  it('a 90 % interval is 1.645 sds to either side', () => {
    expect(interval90(0.65, 0.1).low).toBeCloseTo(0.4855, 4);
    expect(interval90(0.65, 0.1).high).toBeCloseTo(0.8145, 4);
  });
});

describe('refusing to pretend', () => {
  it('two runs in one kind of weather leave the pressure exponent at its prior, and it says so', () => {
    const two = [airOf(-11, 990, 0.7), airOf(-9, 991, 0.6)].map((air, i) => rightRun(`${i}`, air, truth));
    const learned = learnResponse(machine, evidenceOfLog(machine, two));
    expect(learned.response.pressureExponent).toBeCloseTo(0.65, 2);
    expect(learned.response.pressureSd).toBeGreaterThan(0.11);
    expect(learned.pressure).toMatchObject({
      state: 'near-prior',
      why: 'one-kind-of-weather',
      borrowed: false,
    });
    expect(learned.temperature).toMatchObject({ state: 'near-prior', why: 'one-kind-of-weather' });
  });

  it('a winter at one track teaches temperature and not pressure', () => {
    const oneTrack = [-30, -25, -20, -15, -5, 0, 5, 10]
      .flatMap((celsius) => [0, 1, 2].map((repeat) => ({ celsius, repeat })))
      .map(({ celsius, repeat }) =>
        rightRun(`${celsius}/${repeat}`, airOf(celsius, 990, 0.7), { pressure: 0.65, temperature: 0.95 }),
      );
    const learned = learnResponse(machine, evidenceOfLog(machine, oneTrack));
    expect(learned.temperature.state).toBe('learned');
    expect(learned.pressure).toMatchObject({ state: 'near-prior', why: 'one-kind-of-weather' });
    // The two usually go together, so the pressure exponent follows a little: said, not hidden.
    expect(learned.pressure.borrowed).toBe(true);
    expect(learned.response.pressureSd).toBeGreaterThan(0.07);
  });

  it('where every high track was also a cold one, the two cannot be told apart, and it says so', () => {
    const together = Array.from({ length: 12 }, (_, i) =>
      rightRun(`${i}`, airOf(-10 - 2.5 * i, 990 * (263.15 / (263.15 - 2.5 * i)) ** -1.5, 0.5), truth),
    );
    const learned = learnResponse(machine, evidenceOfLog(machine, together));
    expect(learned.pressure).toMatchObject({ state: 'near-prior', why: 'moves-together' });
    expect(learned.temperature).toMatchObject({ state: 'near-prior', why: 'moves-together' });
  });
});

describe('which entries moved it', () => {
  const wild = rightRun('wild', airOf(-25, 850, 0.6), { pressure: 0.9, temperature: 2.5 });
  const learned = learnResponse(machine, evidenceOfLog(machine, [...log, wild]));
  const entry = (id: string) => learned.entries.find((one) => one.id === id)!;

  it('an entry nobody would believe is named an outlier and counted less', () => {
    expect(entry('wild').outlier).toBe(true);
    expect(entry('wild').weight).toBeLessThan(0.5);
    expect(learned.entries.filter((one) => one.outlier)).toHaveLength(1);
    expect(Math.abs(learned.response.pressureExponent - 0.9)).toBeLessThan(0.08);
  });

  it('the influence told is what deleting the entry does', () => {
    const runs = log.map(
      (run): LogEntry => (run.id === '4/840' ? { ...run, verdict: 'lean', sizes: 1 } : run),
    );
    const all = learnResponse(machine, evidenceOfLog(machine, runs));
    const others = runs.filter((run) => run.id !== '4/840');
    const without = learnResponse(machine, evidenceOfLog(machine, others));
    const told = all.entries.find((one) => one.id === '4/840')!.influence;
    // The weights of the prior's parts are held in the telling and free in the deleting: a tenth at most.
    const done = all.response.pressureExponent - without.response.pressureExponent;
    expect(Math.abs(told.pressure)).toBeGreaterThan(0.005);
    expect(Math.abs(told.pressure / done - 1)).toBeLessThan(0.1);
  });

  it('the fit as a picture: observed is fitted plus what the entry is off', () => {
    const [first] = learnResponse(machine, evidenceOfLog(machine, log)).entries;
    expect(first!.fitted).toBeCloseTo(first!.observed, 2);
    expect(entry('wild').observed - entry('wild').fitted).toBeGreaterThan(0.05);
  });

  it('scatter as stated is near one, and a clean log is below it', () => {
    expect(learnResponse(machine, evidenceOfLog(machine, log)).scatter).toBeLessThan(0.5);
    const jumpy = log.map((run, i): LogEntry => ({ ...run, verdict: i % 2 ? 'rich' : 'lean', sizes: 2 }));
    expect(learnResponse(machine, evidenceOfLog(machine, jumpy)).scatter).toBeGreaterThan(2);
  });
});
