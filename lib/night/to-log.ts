import type { Air } from '@/lib/air/air';
import { type CylinderVerdicts, verdictFields } from '@/lib/carb/verdicts';
import type { AirStateJson } from '@/lib/contract/air';
import { hasBegun } from '@/lib/plan/has-begun';
import type { Plan } from '@/lib/plan/types';
import { type PastRunChoices, pastRunChoices } from '@/lib/standing/past-run';
import type { LogRecord, Stored } from '@/lib/store/records';
import { isoLocal } from '@/lib/time/zone';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { withoutDust } from '@/lib/units/entry-text';
import type { Night } from './night';

/** A run that was made or has begun and is not in the log yet: all that is known of it without asking. */
export type RunToLog = {
  readonly name: string;
  /** Counts the machine's runs as they stand in the event's record. */
  readonly given: number;
  readonly entry: LogRecord;
  /** What it may have been made on, to be asked before it is logged; null where somebody said. */
  readonly choices: PastRunChoices | null;
};

type Given = {
  readonly night: Pick<Night, 'records' | 'zone' | 'request'>;
  readonly plan: Plan;
  readonly log: readonly Stored<LogRecord>[];
};

/** Runs of the night that have begun, the last one first: jets as they were told, air as the plan knew it. */
export function runsToLog({ night, plan, log }: Given): readonly RunToLog[] {
  const { event, machine } = night.records;
  const logged = new Set(
    log
      .filter(({ value }) => value.eventId === event.id && value.machineId === machine.id)
      .map(({ value }) => value.at),
  );
  const elevationM = event.value.event.elevationM;
  return plan.runs
    .filter(hasBegun)
    .flatMap((planned) => {
      const { run, setting, air } = planned;
      const [sorted, given] = [plan.sortedRuns[run], plan.order[run]];
      if (sorted === undefined || given === undefined) return [];
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
      return [{ name: sorted.name, given, entry, choices: pastRunChoices(night.request, plan, planned) }];
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

/** The entry with what was found in each cylinder; a single tap says the same of all. */
export function judged(entry: LogRecord, verdicts: CylinderVerdicts, sizes: number | null = null): LogRecord {
  return { ...entry, ...verdictFields(verdicts, sizes) };
}
