import type { Night } from '@/components/night/night';
import type { Air } from '@/lib/air/air';
import type { Verdict } from '@/lib/carb/observation';
import type { AirStateJson } from '@/lib/contract/air';
import type { Plan } from '@/lib/plan/types';
import type { LogRecord, Stored } from '@/lib/store/records';
import { isoLocal } from '@/lib/time/zone';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { withoutDust } from '@/lib/units/entry-text';

/** A run that is over and not in the log yet: all that is known of it without asking. */
export type RunToLog = { readonly name: string; readonly entry: LogRecord };

type Given = {
  readonly night: Pick<Night, 'records' | 'zone'>;
  readonly plan: Plan;
  readonly log: readonly Stored<LogRecord>[];
};

/** Runs of the night that are over, the last one first: jets as they were, air as the plan knew it. */
export function runsToLog({ night, plan, log }: Given): readonly RunToLog[] {
  const { event, machine } = night.records;
  const logged = new Set(
    log
      .filter(({ value }) => value.eventId === event.id && value.machineId === machine.id)
      .map(({ value }) => value.at),
  );
  const elevationM = event.value.event.elevationM;
  return plan.runs
    .filter(({ state }) => state === 'made')
    .flatMap(({ run, setting, air }) => {
      const sorted = plan.sortedRuns[run];
      if (sorted === undefined) return [];
      const at = isoLocal(sorted.start, night.zone);
      if (logged.has(at)) return [];
      const entry: LogRecord = {
        machineId: machine.id,
        eventId: event.id,
        run: sorted.name,
        at,
        air: airJson(air, elevationM),
        setting: { mains: [...setting.mains], trim: setting.trim },
        verdict: null,
        sizes: null,
        judgedBy: null,
        seconds: null,
        speedKmh: null,
        note: '',
      };
      return [{ name: sorted.name, entry }];
    })
    .reverse();
}

/** An air as station values; a standard atmosphere's stays marked as an estimate by leaving its pressure out. */
function airJson(air: Air, elevationM: number): AirStateJson {
  return {
    temperatureC: withoutDust(kelvinToCelsius(air.temperature)),
    ...(air.pressureFrom === 'standard'
      ? {}
      : { pressureHpa: withoutDust(pascalToHectopascal(air.pressure)) }),
    elevationM,
    relativeHumidity: withoutDust(air.relativeHumidity),
  };
}

/** The entry with what a single tap says. */
export function judged(entry: LogRecord, verdict: Verdict | null): LogRecord {
  return { ...entry, verdict, sizes: verdict === 'right' ? 0 : null };
}
