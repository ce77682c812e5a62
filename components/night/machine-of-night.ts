import type { MachineJson } from '@/lib/contract/machine';
import type { BoxRecord, MachineRecord } from '@/lib/store/records';

/** The machine as it is tonight: with the baseline that is in force and the box it shares, if it shares one. */
export function machineOfNight(record: MachineRecord, box: BoxRecord | null): MachineJson {
  const active = record.baselines.find(({ id }) => id === record.activeBaselineId);
  const machine = box === null ? record.machine : { ...record.machine, box: box.entries };
  if (active === undefined) return machine;
  const trim =
    machine.trim === undefined || active.trim === null
      ? machine.trim
      : { ...machine.trim, baseline: active.trim };
  return {
    ...machine,
    carburettors: active.mains.map((main) => ({ main })),
    baseline: active.baseline,
    ...(trim === undefined ? {} : { trim }),
  };
}
