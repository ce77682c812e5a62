import type { Setting } from '@/lib/carb/machine';
import type { EventRecord } from '@/lib/store/records';

type StoredSetting = EventRecord['fitted'][string];
type MachinePart = Pick<EventRecord, 'fitted' | 'made' | 'accepted'>;

const stored = ({ mains, trim }: Setting): StoredSetting => ({ mains: [...mains], trim });

/** The event after a person said what is in the engine. */
export function withFitted(record: EventRecord, machineId: string, setting: Setting): EventRecord {
  return { ...record, fitted: { ...record.fitted, [machineId]: stored(setting) } };
}

type Made = { readonly machineId: string; readonly run: number; readonly setting: Setting };

/** The event after a run was made; `run` counts the event's runs as they stand in the record. */
export function withMade(record: EventRecord, { machineId, run, setting }: Made): EventRecord {
  const before = (record.made[machineId] ?? []).filter((made) => made.run !== run);
  return { ...record, made: { ...record.made, [machineId]: [...before, { run, setting: stored(setting) }] } };
}

/** The event with the plan a person acts on, so that a new plan changes its mind only for a reason. */
export function withAccepted(
  record: EventRecord,
  machineId: string,
  settings: readonly Setting[],
): EventRecord {
  return { ...record, accepted: { ...record.accepted, [machineId]: settings.map(stored) } };
}

/** The event with what it said about one machine before; the way back from the acts above. */
export function withMachineAsBefore(
  record: EventRecord,
  machineId: string,
  before: MachinePart,
): EventRecord {
  return {
    ...record,
    fitted: putBack(record.fitted, machineId, before.fitted[machineId]),
    made: putBack(record.made, machineId, before.made[machineId]),
    accepted: putBack(record.accepted, machineId, before.accepted[machineId]),
  };
}

function putBack<V>(all: Record<string, V>, key: string, value: V | undefined): Record<string, V> {
  const { [key]: _, ...others } = all;
  return value === undefined ? others : { ...others, [key]: value };
}

/** True where nobody has acted on the event yet. */
export function isUntouched(record: EventRecord): boolean {
  const parts = [record.fitted, record.made, record.accepted];
  return parts.every((part) => Object.keys(part).length === 0) && record.readings.length === 0;
}
