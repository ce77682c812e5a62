import { runsFromEvent } from '@/lib/contract/event-from-json';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import type { ContractProblem } from '@/lib/contract/problem';
import type { PlanRequest } from '@/lib/plan/types';
import { ok, type Result } from '@/lib/result/result';
import { machineTonight } from '@/lib/store/machine-tonight';
import { eventOfRacer } from '@/lib/store/racer-event';
import type { BoxRecord, EventRecord, LogRecord, MachineRecord, Stored } from '@/lib/store/records';
import { type Told, toldAbout } from './told-about';

/** What the store holds about one machine at one event. */
export type MachineAtEvent = {
  readonly event: Stored<EventRecord>;
  readonly machine: Stored<MachineRecord>;
  readonly box: BoxRecord | null;
  /** The run log of this machine at this event. */
  readonly log: readonly LogRecord[];
};

/** What the planner is asked of one machine alone, whether it is the only one of the night or one of a club's. */
export function machineRequest({
  event: { value: event },
  machine: { id, value },
  box,
  log,
}: MachineAtEvent): Result<Pick<PlanRequest, 'machine' | 'runs'> & Told, readonly ContractProblem[]> {
  const machine = machineFromJson(machineTonight(value, box, log));
  if (!machine.ok) return machine;
  const runs = runsFromEvent(eventOfRacer(event, id));
  const told = toldAbout(event, { machineId: id, machine: machine.value, runs: runs.length });
  return ok({ machine: machine.value, runs, ...told });
}
