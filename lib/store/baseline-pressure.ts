import { type PressureAnswer, withPressureAnswer } from '@/lib/contract/pressure-answer';
import { machineWithBaseline } from './machine-in-force';
import { recordWithMachine } from './record-with-machine';
import type { MachineRecord } from './records';

/** The record after somebody said which kind of pressure its baseline's air was typed with. */
export function withBaselinePressure(record: MachineRecord, answer: PressureAnswer): MachineRecord {
  const machine = machineWithBaseline(record);
  const air = withPressureAnswer(machine.baseline.air, answer);
  return recordWithMachine(record, { ...machine, baseline: { ...machine.baseline, air } });
}
