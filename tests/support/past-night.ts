import { DEMO_EVENT_ID, DEMO_MACHINE_ID, demoNight } from '@/components/night/demo-night';
import { type NightRecords, nightFrom, planNight } from '@/components/night/night';
import { withAcceptedPlan, withMade } from '@/components/night/records';
import type { Setting } from '@/lib/carb/machine';
import { expectOk } from '@/lib/result/result';
import type { EventRecord, LogRecord } from '@/lib/store/records';
import { addMinutes, type Instant, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { kelvinToCelsius } from '@/lib/units/convert';

/** 18:15 in Chicago on 16 January 2027, before the first run of the invented night. */
export const BEFORE: Instant = instant(Date.UTC(2027, 0, 17, 0, 15));
export const MORNING_AFTER: Instant = addMinutes(BEFORE, 14 * 60);

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
  const { event, machine } = demoNight(BEFORE);
  const stored = { revision: 1, updatedAt: '2027-01-16T00:00:00Z' };
  const records = (value: EventRecord): NightRecords => ({
    event: { id: DEMO_EVENT_ID, ...stored, value },
    machine: { id: DEMO_MACHINE_ID, ...stored, value: machine },
    box: null,
    forecast: null,
    log: [],
  });
  const own = { ...event, demo: false };
  const plan = expectOk(planNight(expectOk(nightFrom(records(own))), BEFORE));
  const accepted = past.accepted === false ? own : withAcceptedPlan(own, DEMO_MACHINE_ID, plan);
  const inRun = (run: number): Setting => past.kept ?? plan.runs[run]!.setting;
  const made = (past.told ?? []).reduce(
    (record, run) => withMade(record, { machineId: DEMO_MACHINE_ID, run, setting: inRun(run) }),
    accepted,
  );
  const readings = (past.readings ?? []).map(([run, off]) => ({
    id: `r${run}`,
    time: isoUtc(plan.sortedRuns[run]!.start),
    temperatureC: kelvinToCelsius(givenAt(plan.sortedRuns[run]!.start)) + off,
    confirmed: false,
  }));
  function givenAt(at: Instant) {
    const hours = plan.hours;
    const i = hours.findIndex((hour) => hour.at >= at);
    const [after, before] = [hours[i]!, hours[Math.max(0, i - 1)]!];
    const share = after.at === before.at ? 0 : (at - before.at) / (after.at - before.at);
    return (before.given.temperature +
      (after.given.temperature - before.given.temperature) * share) as typeof before.given.temperature;
  }
  const log = (past.verdicts ?? []).map(
    ([run, verdict]): LogRecord => ({
      machineId: DEMO_MACHINE_ID,
      eventId: DEMO_EVENT_ID,
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
