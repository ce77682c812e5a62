import { describe, expect, it } from 'vitest';
import { comparePlans } from '@/lib/plan/difference';
import { makePlan } from '@/lib/plan/make-plan';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import { seededUniform } from '@/lib/plan/stratified';
import type { Plan, PlanRequest } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { kelvin, ratio } from '@/lib/units/quantity';
import { simulatedNight } from '@/tests/support/simulated-nights';

const planOf = (request: PlanRequest): Plan => expectOk(makePlan(request));

/** The same hours, each moved by what a new run of the same forecast moves it: up to 0.3 K. */
function nudged(request: PlanRequest, by: (hour: number) => number): PlanRequest {
  const hours = request.series.hours.map((hour, i) => ({
    ...hour,
    temperature: kelvin(hour.temperature + by(i)),
  }));
  return { ...request, series: { ...request.series, hours } };
}

/** Up to 0.3 K, one way for the night. */
function noise(seed: number): () => number {
  const uniform = seededUniform(seed, 4);
  return () => 0.6 * uniform() - 0.3;
}

function flips(given: { readonly accepted: boolean; readonly wholeNight: boolean }): number {
  const step = noise(4);
  let [replays, changed] = [0, 0];
  for (let seed = 1; seed <= 100; seed++) {
    const { request } = simulatedNight(seed);
    const plan = planOf(request);
    const accepted = given.accepted ? settingsAsGiven(plan) : null;
    for (let replay = 0; replay < 3; replay++) {
      const whole = step();
      const again = { ...nudged(request, () => (given.wholeNight ? whole : step())), accepted };
      replays += 1;
      if (comparePlans(plan, planOf(again)).nextActChanged) changed += 1;
    }
  }
  return changed / replays;
}

/** The night with the lean limit put right where its own plan's worst run stands; null where none can be lean. */
function atItsLimit(request: PlanRequest): PlanRequest | null {
  const { machine } = request;
  const kept = planOf(request).runs.filter(({ chanceOfLean }) => chanceOfLean <= machine.limits.risk);
  const worst = Math.max(...kept.map(({ chanceOfLean }) => chanceOfLean));
  const limits = { ...machine.limits, risk: ratio(worst * 1.0001) };
  return worst < 0.001 ? null : { ...request, machine: { ...machine, limits } };
}

/** Ten forecasts after one another, each plan accepted as it comes: the next act by forecast, and the runs over the limit. */
function followed(request: PlanRequest, seed: number) {
  const step = noise(seed);
  let last = planOf(request);
  let [changes, back, over] = [0, 0, 0];
  const seen = [settingsAsGiven(last)];
  for (let i = 0; i < 10; i++) {
    const by = step();
    const again = nudged(request, () => by);
    const plan = planOf({ ...again, accepted: settingsAsGiven(last) });
    const settings = settingsAsGiven(plan);
    if (comparePlans(last, plan).nextActChanged) changes += 1;
    const moved = JSON.stringify(settings) !== JSON.stringify(seen.at(-1));
    if (moved && seen.some((each) => JSON.stringify(each) === JSON.stringify(settings))) back += 1;
    if (moved) seen.push(settings);
    const fresh = planOf(again).bySwapCount;
    const helped = fresh.some(({ leanRunsOverRisk }) => leanRunsOverRisk === 0);
    const { risk } = request.machine.limits;
    if (helped) over += plan.runs.filter((run) => run.state === 'planned' && run.chanceOfLean > risk).length;
    last = plan;
  }
  return { changes, back, over };
}

describe('An accepted plan', () => {
  it('keeps its next act in 95 of 100 replays that differ by up to 0.3 K', () => {
    const whole = flips({ accepted: true, wholeNight: true });
    const hourly = flips({ accepted: true, wholeNight: false });
    const careless = flips({ accepted: false, wholeNight: true });
    expect(whole).toBeLessThanOrEqual(0.05);
    expect(hourly).toBeLessThanOrEqual(0.05);
    // Planning afresh each time changes its mind more often: that is what keeping is for.
    expect(careless).toBeGreaterThan(whole);
  }, 60_000);

  it('with a run right at its limit turns richer once, and does not come back with the next forecast', () => {
    let [nights, changes, back, over] = [0, 0, 0, 0];
    for (let seed = 1; seed <= 40; seed++) {
      const request = atItsLimit(simulatedNight(seed).request);
      if (request === null) continue;
      const night = followed(request, seed);
      nights += 1;
      changes += night.changes;
      back += night.back;
      over += night.over;
    }
    expect(nights).toBeGreaterThan(20);
    // Half of the forecasts are colder than the one that put the run at its limit, so nearly every night has its one.
    expect(changes / nights).toBeLessThanOrEqual(1);
    expect(back).toBe(0);
    expect(over).toBe(0);
  }, 60_000);
});
