import { airAt } from '@/lib/air/air-from';
import type { Machine } from '@/lib/carb/machine';
import { DEFAULT_RESPONSE } from '@/lib/carb/response';
import type { Hour, HourSeries } from '@/lib/hours/series';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import type { PlanRequest, Run } from '@/lib/plan/types';
import { addMinutes, HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { kelvinDifference, metre, ratio } from '@/lib/units/quantity';

/** An invented winter night: 17:00 UTC on 16 January 2027. */
export const DUSK: Instant = instant(Date.UTC(2027, 0, 16, 17));

export function clock(hours: number): Instant {
  return addMinutes(DUSK, (hours - 17) * 60);
}

export function hour(at: Instant, celsius: number, given: Partial<Hour> = {}): Hour {
  return {
    at,
    temperature: celsiusToKelvin(celsius),
    pressure: hectopascalToPascal(985),
    pressureFrom: 'station',
    relativeHumidity: ratio(0.8),
    spread: null,
    origin: 'forecast',
    rawModel: false,
    ...given,
  };
}

/** Hourly from 17:00, one temperature in °C for each hour. */
export function seriesOf(celsius: readonly number[], given: Partial<Hour> = {}): HourSeries {
  return {
    hours: celsius.map((t, i) => hour(instant(DUSK + i * HOUR_MS), t, given)),
    elevation: metre(240),
    source: {
      name: 'invented',
      attribution: '',
      attributionUrl: null,
      issuedAt: DUSK,
      fetchedAt: DUSK,
      modelElevation: null,
    },
  };
}

/** Falls from -4 °C at 17:00 to -19 °C at 03:00 and comes back to -12 °C at 09:00. */
export const COLD_NIGHT = seriesOf([
  -4, -6, -8, -10.5, -12.5, -14, -15.5, -17, -18, -18.7, -19, -18.8, -18, -17, -15, -13.5, -12,
]);

export function machineOf(given: Partial<Machine> = {}): Machine {
  return {
    name: 'Long-track twin',
    carburettors: [{ main: 410 }],
    marking: { kind: 'flow' },
    box: [380, 390, 400, 410, 420, 430, 440, 450, 460, 470, 480, 490].map((size) => ({ size, count: 1 })),
    baselineAir: airAt({
      temperature: celsiusToKelvin(-6),
      pressure: hectopascalToPascal(985),
      relativeHumidity: ratio(0.8),
      pressureFrom: 'station',
    }),
    intakeOffset: kelvinDifference(0),
    baselineIntakeOffset: kelvinDifference(0),
    trim: null,
    limits: { lean: ratio(0.02), rich: ratio(0.05), risk: ratio(0.05) },
    response: DEFAULT_RESPONSE,
    pilot: null,
    needle: null,
    fuelDensity: null,
    richPowerLoss: 2,
    swapWorth: null,
    ratedPower: null,
    ...given,
  };
}

/** Runs of ten minutes, the first at an hour of the clock, one every so many minutes. */
export function runsOf(given: {
  readonly first: number;
  readonly every: number;
  readonly count: number;
}): readonly Run[] {
  return Array.from({ length: given.count }, (_, i) => {
    const start = addMinutes(clock(given.first), i * given.every);
    return { name: `Round ${i + 1}`, start, end: addMinutes(start, 10), weight: 1, typicalSeconds: null };
  });
}

export function requestOf(given: Partial<PlanRequest> = {}): PlanRequest {
  return {
    machine: machineOf(),
    runs: runsOf({ first: 18, every: 40, count: 12 }),
    series: COLD_NIGHT,
    readings: [],
    now: DUSK,
    fitted: null,
    made: [],
    accepted: null,
    options: DEFAULT_OPTIONS,
    ...given,
  };
}
