import type { MachineJson } from '@/lib/contract/machine';
import { machineWithBaseline } from './machine-in-force';
import { type MachineRecord, machineRecordSchema } from './records';

/** A record for a machine nobody has any history of. */
export function newMachineRecord(machine: MachineJson): MachineRecord {
  return machineRecordSchema.parse({ machine });
}

/** A second machine like the first, with a name of its own; its history stays with the first. */
export function duplicateOf(record: MachineRecord): MachineRecord {
  const machine = machineWithBaseline(record);
  return { ...newMachineRecord({ ...machine, name: copyName(machine.name) }), boxId: record.boxId };
}

const LONGEST_NAME = 80;
const COPY = ' (copy)';

function copyName(name: string): string {
  return `${name.slice(0, LONGEST_NAME - COPY.length)}${COPY}`;
}
