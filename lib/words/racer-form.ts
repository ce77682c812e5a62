import type { EventRecord, MachineRecord } from '@/lib/store/records';
import { rosterNames } from '@/lib/store/roster-names';
import { sameName } from '@/lib/store/told-apart';
import { isolated } from './isolated';

type Entry = { readonly id: string; readonly value: MachineRecord };

/** What the form of a racer says. */
export const racerWords = {
  title: 'Racer',
  gone: 'This racer was taken off the roster meanwhile. What you typed stays here until you close it; put the machine back on the roster, and save again.',
  badBib: 'Write a number that can be seen, with at most 8 characters, such as 14 or 7A.',
  machine: ({ machine }: MachineRecord): string => `Machine: ${isolated(machine.name)}`,
  /** Said where another racer has the number already; null where nobody has. */
  taken: (
    event: EventRecord,
    machines: readonly Entry[],
    { id, bib }: { readonly id: string; readonly bib: string },
  ): string | null => {
    const names = rosterNames(event, machines);
    const other = machines.find(
      (each) =>
        each.id !== id &&
        bib.trim() !== '' &&
        sameName(event.club?.racers[each.id]?.bib ?? '') === sameName(bib),
    );
    return other === undefined ? null : `${isolated(names.get(other.id) ?? '')} has this bib too.`;
  },
} as const;
