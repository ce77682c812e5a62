import type { MachineJson } from '@/lib/contract/machine';
import { withReproofMark } from './machine-history';
import { activeBaseline } from './machine-in-force';
import type { MachineRecord } from './records';

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
