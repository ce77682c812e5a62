import { type Learned, learnResponse } from '@/lib/carb/learn';
import type { Machine } from '@/lib/carb/machine';
import { logSizeStep } from '@/lib/carb/size-step';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import { evidenceOf, type Uncounted } from '@/lib/store/evidence';
import { responseOf } from '@/lib/store/machine-history';
import { machineBeforeLearning } from '@/lib/store/machine-in-force';
import type { LogRecord, MachineRecord, Stored } from '@/lib/store/records';

export type MachineLearning = {
  readonly machine: Machine;
  readonly learned: Learned;
  readonly leftOut: readonly { readonly id: string; readonly why: Uncounted }[];
  /** ln of area of one jet size at the baseline. */
  readonly logStep: number;
};

/** What a machine's chart and log teach; null where the machine itself cannot be read. */
export function learningOf(record: MachineRecord, log: readonly Stored<LogRecord>[]): MachineLearning | null {
  const machine = machineFromJson(machineBeforeLearning(record));
  const main = record.machine.carburettors[0]?.main;
  if (!machine.ok || main === undefined) return null;
  const { observations, leftOut } = evidenceOf(record, machine.value, log);
  return {
    machine: machine.value,
    learned: learnResponse(machine.value, observations),
    leftOut,
    logStep: logSizeStep(machine.value, main),
  };
}

/** Whether plans use just what was learned, something learned or typed before, or the default. */
export function usedInPlans(record: MachineRecord, learned: Learned): 'these' | 'others' | 'default' {
  const { response } = record.machine;
  if (response === undefined) return 'default';
  const mine = responseOf(learned);
  const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;
  const same =
    response.origin === mine.origin &&
    near(response.pressureExponent, mine.pressureExponent) &&
    near(response.temperatureExponent, mine.temperatureExponent) &&
    near(response.pressureSd, mine.pressureSd) &&
    near(response.temperatureSd, mine.temperatureSd);
  return same ? 'these' : 'others';
}
