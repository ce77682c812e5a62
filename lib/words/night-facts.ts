import { instantFromJson } from '@/lib/contract/event-from-json';
import type { EventRecord, MachineRecord } from '@/lib/store/records';
import { dayText } from './day-text';

/** "Sat 2027-01-16 · Ilsa Vorn's triple": which night, which machine. */
export function nightFacts({ event }: EventRecord, machine: MachineRecord | null): string {
  const first = event.runs[0];
  const parts = [
    first === undefined ? null : dayText(instantFromJson(first.start), event.timezone),
    machine?.machine.name ?? null,
  ];
  return parts.filter((part) => part !== null).join(' · ');
}
