import type { Learned } from '@/lib/carb/learn';
import type { MachineJson } from '@/lib/contract/machine';
import { activeBaseline, hardwareSince, levelBasis, machineWithBaseline } from './machine-in-force';
import type { MachineRecord } from './records';

export type DatedBaseline = MachineRecord['baselines'][number];
export type HardwareChangeRecord = MachineRecord['hardware'][number];
export type ChartCellRecord = MachineRecord['chart'][number];

/** What a person says of a baseline; its id and the parts in place are added here. */
export type NewBaseline = Pick<DatedBaseline, 'id' | 'mains' | 'trim' | 'baseline'>;

/** The record with its mark as its hardware and its baseline say. */
export function withReproofMark(record: MachineRecord): MachineRecord {
  return { ...record, toBeReproven: hardwareSince(record).length > 0 };
}

/** All baselines of a machine; where none was dated yet, the machine's own as the first, under `firstId`. */
export function baselinesOf(record: MachineRecord, firstId: string): readonly DatedBaseline[] {
  if (activeBaseline(record) !== null) return record.baselines;
  const { carburettors, trim, baseline } = record.machine;
  const own = {
    id: firstId,
    mains: carburettors.map(({ main }) => main),
    trim: trim?.baseline ?? null,
    baseline,
  };
  return [own, ...record.baselines];
}

/** The record with one more baseline, in force from now on. The parts fitted up to its date were proven with it. */
export function withNewBaseline(record: MachineRecord, added: NewBaseline, firstId: string): MachineRecord {
  const { provenOn } = added.baseline;
  const inPlace = record.hardware.filter(({ on }) => provenOn === undefined || on <= provenOn);
  const baselines = [...baselinesOf(record, firstId), { ...added, provenWith: inPlace.map(({ id }) => id) }];
  return withActiveBaseline({ ...record, baselines }, added.id);
}

/** The record with another of its baselines in force; the machine itself follows. */
export function withActiveBaseline(record: MachineRecord, id: string): MachineRecord {
  const chosen = { ...record, activeBaselineId: id };
  if (activeBaseline(chosen) === null) return record;
  return withReproofMark({ ...chosen, machine: machineWithBaseline(chosen) });
}

/** The record without a baseline that is not in force. */
export function withoutBaseline(record: MachineRecord, id: string): MachineRecord {
  if (id === record.activeBaselineId) return record;
  return { ...record, baselines: record.baselines.filter((baseline) => baseline.id !== id) };
}

export function withHardware(record: MachineRecord, change: HardwareChangeRecord): MachineRecord {
  return withReproofMark({ ...record, hardware: [...record.hardware, change] });
}

export function withoutHardware(record: MachineRecord, id: string): MachineRecord {
  return withReproofMark({ ...record, hardware: record.hardware.filter((change) => change.id !== id) });
}

export function withChart(record: MachineRecord, chart: readonly ChartCellRecord[]): MachineRecord {
  return { ...record, chart: [...chart] };
}

/** The response as the machine keeps it. */
export function responseOf({ response, origin }: Learned): NonNullable<MachineJson['response']> {
  return { ...response, origin };
}

/** The record whose plans use what was learned: the response, and what the log says of the baseline. */
export function withLearned(record: MachineRecord, learned: Learned): MachineRecord {
  const { learnedLevel: _, ...rest } = record;
  const machine = { ...record.machine, response: responseOf(learned) };
  const { baselineShift } = learned;
  if (baselineShift === null) return { ...rest, machine };
  const learnedLevel = {
    logArea: baselineShift.log,
    sd: baselineShift.sd,
    ...levelBasis(record),
  };
  return { ...rest, machine, learnedLevel };
}

/** The record whose plans use the default again. */
export function withoutLearned(record: MachineRecord): MachineRecord {
  const { learnedLevel: _, ...rest } = record;
  const { response: __, ...machine } = record.machine;
  return { ...rest, machine };
}
