import type { TypedEvent } from '@/components/event/read-event';
import { recordWithEvent } from '@/components/event/record-with-event';
import type { HoursReading } from '@/components/hours/read-hours';
import type { MachineJson } from '@/lib/contract/machine';
import type { EventRecord, MachineRecord } from '@/lib/store/records';

/** Whoever edits the invented night makes it their own. */
export function withEditedEvent(record: EventRecord, typed: TypedEvent): EventRecord {
  return { ...recordWithEvent(record, typed), demo: false };
}

/** The elevation was typed with the hours and belongs to the event. */
export function withEditedHours(record: EventRecord, { typed, elevationM }: HoursReading): EventRecord {
  return { ...record, typed, event: { ...record.event, elevationM }, demo: false };
}

/** The machine as edited; the baseline in force is the one that was edited with it. */
export function withEditedMachine(record: MachineRecord, machine: MachineJson): MachineRecord {
  const mains = machine.carburettors.map(({ main }) => main);
  const baselines = record.baselines.map((dated) =>
    dated.id === record.activeBaselineId
      ? { ...dated, mains, trim: machine.trim?.baseline ?? null, baseline: machine.baseline }
      : dated,
  );
  return { ...record, machine, baselines };
}

export function newMachineRecord(machine: MachineJson): MachineRecord {
  return {
    machine,
    baselines: [],
    activeBaselineId: null,
    boxId: null,
    hardware: [],
    chart: [],
    toBeReproven: false,
  };
}

export function newEventRecord({ event }: TypedEvent, machineId: string): EventRecord {
  return {
    event,
    machineIds: [machineId],
    typed: null,
    forecastId: null,
    readings: [],
    accepted: {},
    fitted: {},
    made: {},
    demo: false,
  };
}
