import { describe, expect, it } from 'vitest';
import { keepingPlanner, makePlan } from '@/lib/plan/make-plan';
import type { PlaceOffset } from '@/lib/plan/place-offset';
import type { PlanRequest } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { addMinutes } from '@/lib/time/instant';
import { celsiusToKelvin } from '@/lib/units/convert';
import { kelvinDifference } from '@/lib/units/quantity';
import { clock, DUSK, machineOf, requestOf, runsOf, seriesOf } from '@/tests/support/plan-cases';

const fitted = (main: number) => ({ mains: [main], trim: null });
const warm = seriesOf(Array.from({ length: 17 }, (_, i) => 5 - i));

const COLD_HOLLOW: PlaceOffset = {
  place: { latitude: 46, longitude: -94 },
  kind: 'official',
  nights: 6,
  ran: kelvinDifference(-2),
  byHour: Array.from({ length: 24 }, () => ({ mean: -1.5, sd: 0.3 })),
};

/** A night, and every change of it that a page may ask about next. */
const ASKED: readonly PlanRequest[] = [
  requestOf(),
  requestOf({ fitted: fitted(430) }),
  requestOf({ fitted: fitted(400), made: [{ run: 0, setting: fitted(400) }], now: addMinutes(DUSK, 90) }),
  requestOf({ fitted: fitted(400), accepted: Array.from({ length: 12 }, () => fitted(440)) }),
  requestOf({ options: { ...requestOf().options, worthIt: null, oneSetting: true } }),
  requestOf({ series: warm }),
  requestOf({ series: warm, fitted: fitted(420) }),
  requestOf({ runs: runsOf({ first: 19, every: 30, count: 8 }) }),
  requestOf({ machine: machineOf({ richPowerLoss: 3 }) }),
  requestOf({ options: { ...requestOf().options, seed: 2 } }),
  requestOf({ options: { ...requestOf().options, scenarios: 32 } }),
  requestOf({ placeOffset: COLD_HOLLOW }),
  requestOf({
    readings: [
      {
        id: 'a',
        at: clock(17.5),
        temperature: celsiusToKelvin(-8),
        stationPressure: null,
        relativeHumidity: null,
      },
    ],
  }),
];

describe('A planner that keeps the night', () => {
  it('makes the very plan that is made afresh, whatever it was asked before', () => {
    const plan = keepingPlanner();
    const order = [...ASKED, ...ASKED.toReversed(), ...ASKED];
    for (const request of order) {
      // As it comes from another thread.
      const kept = expectOk(plan(structuredClone(request)));
      const fresh = expectOk(makePlan(request));
      expect({ ...kept, crossings: kept.crossings }).toEqual({ ...fresh, crossings: fresh.crossings });
    }
  });

  it('says as before why there is none', () => {
    const plan = keepingPlanner();
    const broken = requestOf({ runs: [] });
    expect(plan(requestOf()).ok).toBe(true);
    expect(plan(broken)).toEqual(makePlan(broken));
  });
});
