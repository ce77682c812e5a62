import { runsFromEvent } from '@/lib/contract/event-from-json';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import { expectOk } from '@/lib/result/result';
import type { EventRecord, MachineRecord } from '@/lib/store/records';
import { addMinutes, type Instant } from '@/lib/time/instant';
import { addDays, fromLocal } from '@/lib/time/local';
import { isoLocal } from '@/lib/time/zone';
import { DEMO_MACHINE_ID, DEMO_RUNS, DEMO_ZONE, demoDate, startOfDemoRun } from './living-demo';

/** 1,320 ft. */
const ELEVATION_M = 402.336;

/**
 * Hours after noon and °F: a clear evening over snow, invented. What lies between is left to the curve. What
 * lies before noon is for whoever opens the night before noon, so that there is an air of now: it reaches back to the
 * last run of the evening before, also on the days the clocks change.
 */
const EVENING_F = [
  [-14, 1],
  [-11, -5],
  [-7, -9],
  [-4, -5],
  [-2, 6],
  [0, 17],
  [2, 20],
  [5, 19],
  [6, 18],
  [7, 15],
  [8, 10.5],
  [9, 6],
  [11, -1.5],
  [13, -7],
  [15, -9.5],
  [17, -10],
  [19, -8],
] as const;
const NOON = '12:00';

const RUN_MINUTES = 15;

export type DemoNight = { readonly event: EventRecord; readonly machine: MachineRecord };

/** An invented night as it is set for `now`, with nothing told of it yet. */
export function demoAsSet(now: Instant): DemoNight {
  const date = demoDate(now);
  return { event: demoEvent(date, now), machine: demoMachine(date) };
}

/** When its first run starts; once that is over, somebody has to have gone by it. */
export function demoStart({ event }: DemoNight): Instant | undefined {
  return runsFromEvent(event.event)[0]?.start;
}

function demoEvent(date: string, now: Instant): EventRecord {
  const noon = expectOk(fromLocal(date, NOON, DEMO_ZONE)).at;
  const iso = (at: Instant) => isoLocal(at, DEMO_ZONE);
  return {
    event: {
      name: 'Night drags on Lake Orvana',
      timezone: DEMO_ZONE,
      place: { name: 'Lake Orvana', latitude: 47.42, longitude: -93.61 },
      elevationM: ELEVATION_M,
      runs: Array.from({ length: DEMO_RUNS }, (_, i) => {
        const start = startOfDemoRun(date, i);
        return {
          name: `Round ${i + 1}`,
          start: iso(start),
          end: iso(addMinutes(start, RUN_MINUTES)),
          weight: 1,
          typicalSeconds: 6.4,
        };
      }),
      swapMinutes: DEFAULT_OPTIONS.swapMinutes,
      ride: false,
    },
    machineIds: [DEMO_MACHINE_ID],
    typed: {
      hours: EVENING_F.map(([hour, fahrenheit]) => ({
        at: addMinutes(noon, hour * 60),
        temperatureC: (fahrenheit - 32) / 1.8,
      }))
        .filter(({ at }, i, all) => at >= noon || (all[i + 1]?.at ?? noon) > now)
        .map(({ at, temperatureC }) => ({ time: iso(at), temperatureC, rawModel: false })),
      pressure: { kind: 'station', hpa: 968 },
      relativeHumidity: 0.78,
    },
    forecastId: null,
    readings: [],
    accepted: {},
    fitted: {},
    made: {},
    demo: true,
  };
}

function demoMachine(date: string): MachineRecord {
  return {
    machine: {
      name: 'Ilsa Vorn’s triple',
      carburettors: [{ main: 410 }, { main: 400 }, { main: 410 }],
      jetMarking: 'flow',
      box: [380, 390, 400, 410, 420, 430, 440, 450, 460].map((size) => ({ size, count: 3 })),
      baseline: {
        air: { temperatureC: -10.5, pressureHpa: 970, elevationM: ELEVATION_M, relativeHumidity: 0.75 },
        provenOn: addDays(date, -6) ?? date,
        judged: 'right',
        note: 'Plugs the colour of weak coffee after three full runs. Invented.',
      },
      limits: { leanPercent: 2, richPercent: 5, risk: 0.05 },
      intakeOffsetC: 3,
      richPowerLoss: 2,
    },
    baselines: [],
    activeBaselineId: null,
    boxId: null,
    hardware: [],
    chart: [],
    toBeReproven: false,
  };
}
