import { describe, expect, it } from 'vitest';
import { makePlan, settingsAsGiven } from '@/lib/plan/make-plan';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import type { PlanRequest, Reading } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { kelvin, ratio } from '@/lib/units/quantity';
import { COLD_NIGHT, clock, requestOf } from '@/tests/support/plan-cases';

const planOf = (request: PlanRequest) => expectOk(makePlan(request));
const colderBy = (by: number) => ({
  ...COLD_NIGHT,
  hours: COLD_NIGHT.hours.map((hour) => ({ ...hour, temperature: kelvin(hour.temperature - by) })),
});

/** The thermometer at 17:30 is so far above the hours. */
function readWarmer(by: number): Reading {
  const [before, after] = [COLD_NIGHT.hours[0]!.temperature, COLD_NIGHT.hours[1]!.temperature];
  return {
    id: 'r1',
    at: clock(17.5),
    temperature: kelvin((before + after) / 2 + by),
    stationPressure: null,
    relativeHumidity: null,
    confirmed: true,
  };
}

describe('The next act of an accepted plan', () => {
  // A worth that is asked for is not doubled by a reading: nothing but the waiting differs.
  const options = { ...DEFAULT_OPTIONS, worthIt: ratio(0.005) };
  const request = requestOf({ now: clock(17.6), options });
  // Accepted when the night was said to be 0.7 K colder: its first swap comes a run early.
  const early = planOf({ ...request, series: colderBy(0.7) });
  const accepted = settingsAsGiven(early);
  const first = early.swaps[0]!;

  it('stays where it is for somebody who does not read', () => {
    const plan = planOf({ ...request, accepted });
    expect(plan.swaps[0]!.beforeRun).toBe(first.beforeRun);
    expect(plan.kept).toBe(true);
  });

  it('waits for somebody who reads, as long as what is in keeps the limit', () => {
    const plan = planOf({ ...request, accepted, readings: [readWarmer(1)] });
    expect(plan.swaps[0]!.beforeRun).toBeGreaterThan(first.beforeRun);
    expect(plan.swaps[0]!.to).toEqual(first.to);
    const { risk } = request.machine.limits;
    for (const { chanceOfLean } of plan.runs) expect(chanceOfLean).toBeLessThanOrEqual(risk);
  });

  it('does not wait where the reading says that the night is as cold as that', () => {
    const plan = planOf({ ...request, accepted, readings: [readWarmer(-1.5)] });
    expect(plan.swaps[0]!.beforeRun).toBeLessThanOrEqual(first.beforeRun);
  });

  it('never waits longer than a plan made afresh would', () => {
    for (const by of [-2, -1, 0, 1, 2, 3]) {
      const read = { ...request, readings: [readWarmer(by)] };
      const [fresh, waiting] = [planOf(read), planOf({ ...read, accepted })];
      const latest = fresh.swaps[0]?.beforeRun ?? Number.POSITIVE_INFINITY;
      expect(waiting.swaps[0]?.beforeRun ?? latest, `${by} K`).toBeLessThanOrEqual(latest);
    }
  });
});
