import { describe, expect, it } from 'vitest';
import { comparePlans } from '@/lib/plan/difference';
import { makePlan, settingsAsGiven } from '@/lib/plan/make-plan';
import { seededUniform } from '@/lib/plan/stratified';
import type { PlanRequest } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { kelvin } from '@/lib/units/quantity';
import { simulatedNight } from '@/tests/support/simulated-nights';

/** The same hours, each moved by what a new run of the same forecast moves it: up to 0.3 K, one way for the night. */
function nudged(request: PlanRequest, by: (hour: number) => number): PlanRequest {
  const hours = request.series.hours.map((hour, i) => ({
    ...hour,
    temperature: kelvin(hour.temperature + by(i)),
  }));
  return { ...request, series: { ...request.series, hours } };
}

function flips(given: { readonly accepted: boolean; readonly wholeNight: boolean }): number {
  const uniform = seededUniform(4, 4);
  const step = () => 0.6 * uniform() - 0.3;
  let [replays, changed] = [0, 0];
  for (let seed = 1; seed <= 150; seed++) {
    const { request } = simulatedNight(seed);
    const plan = expectOk(makePlan(request));
    const accepted = given.accepted ? settingsAsGiven(plan) : null;
    for (let replay = 0; replay < 4; replay++) {
      const whole = step();
      const again = { ...nudged(request, () => (given.wholeNight ? whole : step())), accepted };
      replays += 1;
      if (comparePlans(plan, expectOk(makePlan(again))).nextActChanged) changed += 1;
    }
  }
  return changed / replays;
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
});
