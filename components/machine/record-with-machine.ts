import type { MachineJson } from '@/lib/contract/machine';
import { withReproofMark } from '@/lib/store/machine-history';
import { activeBaseline, machineWithBaseline } from '@/lib/store/machine-in-force';
import { type MachineRecord, machineRecordSchema } from '@/lib/store/records';

/** A record for a machine nobody has any history of. */
export function newMachineRecord(machine: MachineJson): MachineRecord {
  return machineRecordSchema.parse({ machine });
}

/**
 * The record after its machine was edited. The baseline in force is changed with it, or the form would seem to have
 * no effect; other baselines and the history stay.
 */
export function recordWithMachine(record: MachineRecord, machine: MachineJson): MachineRecord {
  const active = activeBaseline(record);
  if (active === null) return withReproofMark({ ...record, machine });
  const edited = {
    ...active,
    mains: machine.carburettors.map(({ main }) => main),
    trim: machine.trim?.baseline ?? null,
    baseline: machine.baseline,
  };
  return withReproofMark({
    ...record,
    machine,
    baselines: record.baselines.map((baseline) => (baseline.id === active.id ? edited : baseline)),
  });
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
