import type { Setting } from '@/lib/carb/machine';
import { hourAt } from '@/lib/hours/at';
import { type NightRecords, nightFrom } from '@/lib/night/night';
import { withAcceptedPlan, withMade } from '@/lib/night/records';
import { expectOk } from '@/lib/result/result';
import { writeBackup } from '@/lib/store/backup-file';
import type { EventRecord, LogRecord } from '@/lib/store/records';
import { addMinutes, type Instant, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { kelvinToCelsius } from '@/lib/units/convert';
import { followedDemo } from '@/tests/support/followed-demo';
import { planNight } from '@/tests/support/plan-night';

/** 18:15 in Chicago on 16 January 2027, before the first run of the invented night. */
export const BEFORE: Instant = instant(Date.UTC(2027, 0, 17, 0, 15));
export const MORNING_AFTER: Instant = addMinutes(BEFORE, 14 * 60);

const PAST_EVENT_ID = 'past-night';
const PAST_MACHINE_ID = 'past-machine';

export type Past = {
  /** What was read: how far off the typed hours [K], at the start of a run counted from 0. */
  readonly readings?: readonly (readonly [run: number, off: number])[];
  /** Runs that were told as made. */
  readonly told?: readonly number[];
  /** What was in; absent: as planned. */
  readonly kept?: Setting;
  readonly verdicts?: readonly (readonly [run: number, verdict: LogRecord['verdict']])[];
  readonly accepted?: boolean;
};

/** The invented night as somebody's own, over, with what was told of it. */
export function pastNight(past: Past = {}): NightRecords {
  const { event, machine } = followedDemo(BEFORE);
  const stored = { revision: 1, updatedAt: '2027-01-16T00:00:00Z' };
  const records = (value: EventRecord): NightRecords => ({
    event: { id: PAST_EVENT_ID, ...stored, value },
    machine: { id: PAST_MACHINE_ID, ...stored, value: machine },
    box: null,
    forecast: null,
    log: [],
  });
  const own: EventRecord = { ...event, machineIds: [PAST_MACHINE_ID], demo: false };
  const night = expectOk(nightFrom(records(own)));
  const plan = expectOk(planNight(night, BEFORE));
  const accepted = past.accepted === false ? own : withAcceptedPlan(own, PAST_MACHINE_ID, plan);
  const inRun = (run: number): Setting => past.kept ?? plan.runs[run]!.setting;
  const made = (past.told ?? []).reduce(
    (record, run) => withMade(record, { machineId: PAST_MACHINE_ID, run, setting: inRun(run) }),
    accepted,
  );
  const readings = (past.readings ?? []).map(([run, off]) => ({
    id: `r${run}`,
    time: isoUtc(plan.sortedRuns[run]!.start),
    temperatureC: kelvinToCelsius(hourAt(night.series, plan.sortedRuns[run]!.start)!.temperature) + off,
    confirmed: false,
  }));
  const log = (past.verdicts ?? []).map(
    ([run, verdict]): LogRecord => ({
      machineId: PAST_MACHINE_ID,
      eventId: PAST_EVENT_ID,
      run: plan.sortedRuns[run]!.name,
      at: isoUtc(plan.sortedRuns[run]!.start),
      air: {
        temperatureC: kelvinToCelsius(plan.runs[run]!.air.temperature),
        pressureHpa: 968,
        relativeHumidity: 0.78,
      },
      setting: { mains: [...inRun(run).mains], trim: inRun(run).trim },
      verdict,
      sizes: verdict === 'right' ? 0 : null,
      judgedBy: null,
      seconds: null,
      speedKmh: null,
      note: '',
    }),
  );
  return { ...records({ ...made, readings }), log };
}

/** The same as the file it would be kept in: nothing else is in the store. */
export function pastNightFile(past: Past): string {
  const { event, machine, log } = pastNight(past);
  const at = { revision: 1, updatedAt: event.updatedAt };
  return writeBackup(
    {
      machines: [machine],
      boxes: [],
      events: [event],
      log: log.map((value, i) => ({ id: `log-${i}`, ...at, value })),
      forecasts: [],
      comparisons: [],
      preferences: [],
    },
    isoUtc(MORNING_AFTER),
  );
}

/** Of a night that was read four times, two of its runs not told and two of the others judged. */
export function partlyToldNightFile(): string {
  return pastNightFile({
    readings: [
      [0, -2],
      [2, -3],
      [4, -3.5],
      [6, -3],
    ],
    told: [0, 1, 2, 3, 4, 5],
    verdicts: [
      [0, 'right'],
      [3, 'rich'],
    ],
  });
}
