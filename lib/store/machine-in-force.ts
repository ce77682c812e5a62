import type { MachineJson } from '@/lib/contract/machine';
import type { BoxRecord, MachineRecord } from './records';
import { sameValue } from './same-value';

type HardwareChangeRecord = MachineRecord['hardware'][number];
type DatedBaseline = MachineRecord['baselines'][number];

/** The dated baseline that is in force; null where the machine's own is. */
export function activeBaseline(record: MachineRecord): DatedBaseline | null {
  return record.baselines.find(({ id }) => id === record.activeBaselineId) ?? null;
}

/**
 * Parts changed since the baseline in force was proven, oldest first. A change counts unless it is dated before the
 * baseline or is known to have been in place; one of the same day counts, for it may be of after the last run.
 */
export function hardwareSince(record: MachineRecord): readonly HardwareChangeRecord[] {
  const active = activeBaseline(record);
  const { provenOn } = active?.baseline ?? record.machine.baseline;
  const inPlace = new Set(active?.provenWith);
  return record.hardware
    .filter(({ id, on }) => !inPlace.has(id) && (provenOn === undefined || on >= provenOn))
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}

/** The machine as it is edited: with the baseline in force, without what follows from parts or the log. */
export function machineWithBaseline(record: MachineRecord): MachineJson {
  const active = activeBaseline(record);
  if (active === null) return record.machine;
  const { trim, ...machine } = record.machine;
  return {
    ...machine,
    carburettors: active.mains.map((main) => ({ main })),
    baseline: active.baseline,
    ...(trim === undefined ? {} : { trim: { ...trim, baseline: active.trim ?? trim.baseline } }),
  };
}

/**
 * The machine as it is tonight, for the planner: the baseline in force, the box it shares, if it shares one, the parts
 * changed since, and what the log taught about the baseline while that still holds.
 */
export function machineInForce(record: MachineRecord, box: BoxRecord | null): MachineJson {
  const machine = machineWithBaseline(record);
  const hardware = hardwareSince(record).map(({ kind, amount }) => ({ kind, amount }));
  const learned = learnedShift(record);
  return {
    ...machine,
    ...(box === null ? {} : { box: box.entries }),
    ...(hardware.length === 0 ? {} : { hardware }),
    ...(learned === null ? {} : { baselineShift: learned }),
  };
}

/** The machine that evidence is counted against: as tonight, without what was learned before, or it would count twice. */
export function machineBeforeLearning(record: MachineRecord): MachineJson {
  const { baselineShift: _, ...machine } = machineInForce(record, null);
  return machine;
}

/** What learning would be about: the baseline in force with the parts changed since. */
export function levelBasis(
  record: MachineRecord,
): Pick<NonNullable<MachineRecord['learnedLevel']>, 'mains' | 'air' | 'hardware'> {
  const { carburettors, baseline } = machineWithBaseline(record);
  // Standing by a pressure does not change it, so it unlearns nothing.
  const { pressureConfirmed: _, ...air } = baseline.air;
  return {
    mains: carburettors.map(({ main }) => main),
    air,
    hardware: hardwareSince(record).map(({ id }) => id),
  };
}

/** null where nothing was learned about the baseline, or it was another one. */
function learnedShift(record: MachineRecord): MachineJson['baselineShift'] | null {
  if (record.learnedLevel === undefined) return null;
  const { logArea, sd, ...basis } = record.learnedLevel;
  return sameValue(basis, levelBasis(record)) ? { logArea, sd } : null;
}
