import type { Air } from '@/lib/air/air';
import type { Machine } from '@/lib/carb/machine';
import type { HourSeries } from '@/lib/hours/series';
import { TYPED_SOURCE } from '@/lib/hours/typed';
import { makePlan } from '@/lib/plan/make-plan';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import type { Plan, PlanProblem } from '@/lib/plan/types';
import type { Result } from '@/lib/result/result';
import { instant } from '@/lib/time/instant';
import { metre, type Ratio } from '@/lib/units/quantity';

/** One air has no clock: it is asked about at a moment of no meaning. */
const ANY_MOMENT = instant(0);

/** Air that is known, as a series of one hour. Its height is in its pressure. */
function stillAir({ temperature, pressure, pressureFrom, relativeHumidity }: Air): HourSeries {
  const hour = { at: ANY_MOMENT, temperature, pressure, pressureFrom, relativeHumidity };
  return {
    hours: [{ ...hour, spread: null, origin: 'typed' }],
    elevation: metre(0),
    source: TYPED_SOURCE,
  };
}

/**
 * The planner asked about one air: one run of no length, the temperature read from a thermometer. What is fitted is
 * the baseline.
 *
 * @param worthIt power a change of jets must save; null: what the machine says; 0 asks for the best jets with no regard to what is fitted
 */
export function planAt(machine: Machine, air: Air, worthIt: Ratio | null): Result<Plan, PlanProblem> {
  return makePlan({
    machine,
    runs: [{ name: '', start: ANY_MOMENT, end: ANY_MOMENT, weight: 1, typicalSeconds: null }],
    series: stillAir(air),
    readings: [
      {
        id: 'thermometer',
        at: ANY_MOMENT,
        temperature: air.temperature,
        stationPressure: null,
        relativeHumidity: null,
      },
    ],
    now: ANY_MOMENT,
    fitted: null,
    made: [],
    accepted: null,
    options: { ...DEFAULT_OPTIONS, worthIt, swapMinutes: 0, oneSetting: true },
  });
}
