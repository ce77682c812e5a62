import type { Machine } from '@/lib/carb/machine';
import { tonightOf, type VerdictTonight } from '@/lib/carb/tonight';
import { airFromJson } from '@/lib/contract/air-from-json';
import type { MachineJson } from '@/lib/contract/machine';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import { settingOf, settingProblems } from '@/lib/contract/setting-problems';
import { machineInForce } from './machine-in-force';
import type { BoxRecord, LogRecord, MachineRecord } from './records';

/**
 * The machine as it is tonight, with what the run log of this very event says: a lean plug changes the next run, not
 * next week's.
 *
 * @param log entries of this machine at this event, in any order
 */
export function machineTonight(
  record: MachineRecord,
  box: BoxRecord | null,
  log: readonly LogRecord[],
): MachineJson {
  const json = machineInForce(record, box);
  if (log.length === 0) return json;
  const machine = machineFromJson(json);
  if (!machine.ok) return json;
  const tonight = tonightOf(machine.value, verdictsOf(machine.value, log));
  const { tonight: _, ...proven } = json;
  return tonight === null ? proven : { ...proven, tonight: { ...tonight, logAreas: [...tonight.logAreas] } };
}

/** Entries with a verdict that fit the machine as it is, oldest first. */
function verdictsOf(machine: Machine, log: readonly LogRecord[]): readonly VerdictTonight[] {
  return [...log]
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at))
    .flatMap(({ run, air, setting, verdict, verdicts, sizes }): VerdictTonight[] => {
      const read = airFromJson(air);
      if (verdict === null || !read.ok || settingProblems(setting, machine, []).length > 0) return [];
      const each = verdicts ?? machine.carburettors.map(() => verdict);
      return [{ run, air: read.value, setting: settingOf(setting, machine), verdicts: each, sizes }];
    });
}
