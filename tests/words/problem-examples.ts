import type { AirProblem } from '@/lib/air/air';
import type { PlanProblem } from '@/lib/plan/types';
import { celsiusToKelvin } from '@/lib/units/convert';
import { at } from './plan-of';

/** One example of every problem of a kind: a new code without one does not compile. */
export type Every<P extends { readonly code: string }> = Readonly<Record<P['code'], P>>;

export const AIR: Every<AirProblem> = {
  'temperature-out-of-range': { code: 'temperature-out-of-range', temperature: celsiusToKelvin(90) },
  'pressure-out-of-range': { code: 'pressure-out-of-range', pressure: 20_000, kind: 'altimeter' },
  'elevation-out-of-range': { code: 'elevation-out-of-range', elevation: 9000 },
  'humidity-out-of-range': { code: 'humidity-out-of-range', value: 1.2, kind: 'relative' },
  'dew-point-above-temperature': {
    code: 'dew-point-above-temperature',
    dewPoint: celsiusToKelvin(8),
    temperature: celsiusToKelvin(2),
  },
  'sea-level-number-as-station': {
    code: 'sea-level-number-as-station',
    pressure: 101_500,
    elevation: 1600,
    stationIfSeaLevel: 83_800,
  },
  'pressure-too-low-for-elevation': {
    code: 'pressure-too-low-for-elevation',
    pressure: 80_000,
    elevation: 100,
    standard: 100_129,
  },
};

export const PLAN: Every<PlanProblem> = {
  'no-runs': { code: 'no-runs' },
  'no-hours': { code: 'no-hours' },
  'empty-box': { code: 'empty-box' },
  'too-few-jets': { code: 'too-few-jets', carburettors: 3 },
  'setting-does-not-fit': { code: 'setting-does-not-fit', mains: 2, carburettors: 3 },
  'hours-do-not-cover-any-run': {
    code: 'hours-do-not-cover-any-run',
    hoursStart: at('2027-01-15T18:00:00-06:00'),
    hoursEnd: at('2027-01-16T06:00:00-06:00'),
  },
  'run-ends-before-it-starts': { code: 'run-ends-before-it-starts', run: 1 },
  'too-many-runs': { code: 'too-many-runs', limit: 60 },
  'too-much-at-once': { code: 'too-much-at-once', machines: 1, settings: 36_600, runHours: 300 },
};
