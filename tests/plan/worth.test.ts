import { describe, expect, it } from 'vitest';
import { makePlan } from '@/lib/plan/make-plan';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import type { Plan, PlanRequest, Swap } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { horsepowerToWatt } from '@/lib/units/convert';
import { ratio } from '@/lib/units/quantity';
import { clock, machineOf, requestOf, runsOf, seriesOf } from '@/tests/support/plan-cases';
import { simulatedNight } from '@/tests/support/simulated-nights';

const planOf = (request: PlanRequest): Plan => expectOk(makePlan(request));
const jetSwaps = ({ swaps }: Plan) => swaps.filter(({ kind }) => kind === 'jets');
const isForSafety = ({ reason: { code } }: Swap) => code === 'old-turns-lean' || code === 'old-drowned';

/** Warms all day, with limits that would let one jet stay in: what is swapped is swapped for power. */
const forPower = (carburettors: number, own: number | null = null): PlanRequest =>
  requestOf({
    series: seriesOf(Array.from({ length: 17 }, (_, i) => -14 + 1.2 * i)),
    runs: runsOf({ first: 18, every: 60, count: 12 }),
    machine: machineOf({
      carburettors: Array.from({ length: carburettors }, () => ({ main: 410 })),
      box: [390, 400, 410, 420].map((size) => ({ size, count: 6 })),
      limits: { lean: ratio(0.02), rich: ratio(0.2), risk: ratio(0.05) },
      swapWorth: own === null ? null : ratio(own),
    }),
    fitted: { mains: Array.from({ length: carburettors }, () => 420), trim: null },
  });

const NIGHTS = Array.from({ length: 60 }, (_, i) => simulatedNight(20_000 + i).request);

describe('The worth of a swap', () => {
  it('is the machine’s own, and the usual one where it names none', () => {
    expect(planOf(forPower(3)).worth.swap).toBeCloseTo(0.015, 12);
    expect(planOf(forPower(3, 0.004)).worth.swap).toBe(0.004);
    expect(planOf(forPower(3, 0)).worth.swap).toBe(0);
  });

  it('gives way to what is asked for in one request', () => {
    const request = forPower(3, 0.004);
    const options = { ...DEFAULT_OPTIONS, worthIt: ratio(0.03) };
    expect(planOf({ ...request, options }).worth.swap).toBe(0.03);
  });

  it('counts twice where a thermometer is read, but not where a request asks for its own', () => {
    const request = { ...forPower(3), now: clock(17.6) };
    const { temperature } = request.series.hours[0]!;
    const read = { id: 'r', at: clock(17.5), temperature, stationPressure: null, relativeHumidity: null };
    const readings = [{ ...read, confirmed: true }];
    expect(planOf(request).worth).not.toHaveProperty('doubled');
    expect(planOf({ ...request, readings }).worth).toMatchObject({ swap: 0.03, doubled: true });
    const options = { ...DEFAULT_OPTIONS, worthIt: ratio(0.01) };
    expect(planOf({ ...request, readings, options }).worth).toEqual({ swap: 0.01, ratedPower: null });
    // With one setting for all runs nothing can be taken back.
    const ride = { ...request.options, oneSetting: true };
    expect(planOf({ ...request, readings, options: ride }).worth.swap).toBeCloseTo(0.015, 12);
  });

  it('strips one carburettor for power that is not worth opening six', () => {
    // The share of power is the same with any number of carburettors that are alike: only the work differs.
    const [one, six] = [planOf(forPower(1)), planOf(forPower(6))];
    expect(jetSwaps(one).length).toBeGreaterThan(jetSwaps(six).length);
    expect(jetSwaps(planOf(forPower(6, 0.005))).map(({ beforeRun }) => beforeRun)).toEqual(
      jetSwaps(one).map(({ beforeRun }) => beforeRun),
    );
  });

  it('made dearer never adds a swap that is not for safety', () => {
    for (const request of NIGHTS) {
      const counts = [0, 0.001, 0.005, 0.01, 0.02, 0.1, 1].map((worth) => {
        const machine = { ...request.machine, swapWorth: ratio(worth) };
        return jetSwaps(planOf({ ...request, machine })).filter((swap) => !isForSafety(swap)).length;
      });
      for (let i = 1; i < counts.length; i++) expect(counts[i]).toBeLessThanOrEqual(counts[i - 1]!);
    }
  });

  it('however dear leaves no run over its lean limit that a free swap would keep within', () => {
    const over = (request: PlanRequest, worth: number) => {
      const machine = { ...request.machine, swapWorth: ratio(worth) };
      return planOf({ ...request, machine }).runs.map(({ grade }) => grade === 'lean');
    };
    for (const request of NIGHTS) expect(over(request, 1)).toEqual(over(request, 0));
  });

  it('says what it was made for: no lean run that a later swap takes care of', () => {
    for (const request of NIGHTS)
      for (const worth of [0, 0.005]) {
        const plan = planOf({ ...request, machine: { ...request.machine, swapWorth: ratio(worth) } });
        const swaps = jetSwaps(plan);
        for (const [i, { reason, from, to }] of swaps.entries()) {
          if (reason.code !== 'old-turns-lean') continue;
          expect(reason.run).toBeLessThan(swaps[i + 1]?.beforeRun ?? plan.runs.length);
          expect(to.mains.some((main, place) => main > from.mains[place]!)).toBe(true);
        }
      }
  });
});

describe('Rated power', () => {
  it('is handed on for the words and changes nothing else', () => {
    const request = forPower(2);
    const rated = { ...request, machine: { ...request.machine, ratedPower: horsepowerToWatt(180) } };
    const { worth, ...rest } = planOf(rated);
    const { worth: plain, ...same } = planOf(request);
    expect(rest).toEqual(same);
    expect(worth).toEqual({ ...plain, ratedPower: horsepowerToWatt(180) });
  });
});
