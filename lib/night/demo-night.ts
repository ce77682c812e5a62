import { instantFromJson, runsFromEvent } from '@/lib/contract/event-from-json';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import { expectOk } from '@/lib/result/result';
import type { EventRecord, MachineRecord } from '@/lib/store/records';
import { addMinutes, type Instant, instant } from '@/lib/time/instant';
import { addDays, fromLocal } from '@/lib/time/local';
import { isoLocal, localDate } from '@/lib/time/zone';
import { nightFrom, planNight } from './night';
import { withFitted, withMade } from './records';

export const DEMO_EVENT_ID = 'demo-night';
export const DEMO_MACHINE_ID = 'demo-machine';

const ZONE = 'America/Chicago';
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

const FIRST_RUN = '19:00';
const RUNS = 8;
const EVERY_MINUTES = 45;
const RUN_MINUTES = 15;

export type DemoNight = { readonly event: EventRecord; readonly machine: MachineRecord };

/** The evening shown at `now`: the one whose last run is the next last run to start, in the demo's zone. */
export function demoDate(now: Instant): string {
  const date = localDate(now, ZONE);
  const before = addDays(date, -1) ?? date;
  return startOfRun(before, RUNS - 1) >= now ? before : date;
}

/** Whether a stored demo night still has something to show: a run to come, on an evening that is not a later one. */
export function isLiving({ event }: EventRecord, now: Instant): boolean {
  const starts = event.runs.map(({ start }) => instantFromJson(start));
  const first = Math.min(...starts);
  return starts.some((start) => start >= now) && localDate(instant(first), ZONE) <= demoDate(now);
}

/** When a run of the evening of `date` starts; runs count from 0. */
function startOfRun(date: string, run: number): Instant {
  return addMinutes(expectOk(fromLocal(date, FIRST_RUN, ZONE)).at, run * EVERY_MINUTES);
}

/** An invented night, dated tonight where it is set: what the app shows before anything has been entered. */
export function demoNight(now: Instant): DemoNight {
  const date = demoDate(now);
  const machine = demoMachine(date);
  return { event: asFollowed(demoEvent(date, now), machine, now), machine };
}

/** Opened in the middle of its night, the demo shows a racer who has gone by the call so far. */
function asFollowed(event: EventRecord, machine: MachineRecord, now: Instant): EventRecord {
  const runs = runsFromEvent(event.event);
  const start = runs[0]?.start ?? now;
  if (now <= start) return event;
  const stored = { revision: 0, updatedAt: '' };
  const night = expectOk(
    nightFrom({
      event: { id: DEMO_EVENT_ID, ...stored, value: event },
      machine: { id: DEMO_MACHINE_ID, ...stored, value: machine },
      box: null,
      forecast: null,
      log: [],
    }),
  );
  const plan = expectOk(planNight(night, start));
  const made = plan.runs
    .filter(({ run }) => (runs[run]?.end ?? now) <= now)
    .reduce(
      (record, { run, setting }) => withMade(record, { machineId: DEMO_MACHINE_ID, run, setting }),
      event,
    );
  const swap = plan.swaps.findLast(({ latestStart }) => latestStart <= now);
  const setting = swap?.to ?? plan.runs[0]?.setting ?? night.fitted;
  return withFitted(made, DEMO_MACHINE_ID, { at: swap?.latestStart ?? start, setting });
}

function demoEvent(date: string, now: Instant): EventRecord {
  const noon = expectOk(fromLocal(date, NOON, ZONE)).at;
  const iso = (at: Instant) => isoLocal(at, ZONE);
  return {
    event: {
      name: 'Night drags on Lake Orvana',
      timezone: ZONE,
      place: { name: 'Lake Orvana', latitude: 47.42, longitude: -93.61 },
      elevationM: ELEVATION_M,
      runs: Array.from({ length: RUNS }, (_, i) => {
        const start = startOfRun(date, i);
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
