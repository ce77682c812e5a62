import { instantFromJson } from '@/lib/contract/event-from-json';
import type { EventRecord, MachineRecord } from '@/lib/store/records';
import { rosterNames } from '@/lib/store/roster-names';
import { dayText } from './day-text';
import { isolated } from './isolated';
import { counted, listing } from './listing';

/** What taking a roster along says. */
export const LAST_ROSTER = {
  what: 'Takes everybody of another event along, with bib, name, class and box. What was done there stays there; classes run when everybody does until you set their times.',
  none: 'There is no other event with racers in this browser. Paste a table, or open the file of a roster.',
  take: 'Take them along',
  gone: 'Nobody was added: the event was removed meanwhile. Look again.',
  tooMany: (most: number): string =>
    `Nobody was added: an event holds ${most} racers. Take some off the roster first.`,
} as const;

type Entry<V> = { readonly id: string; readonly value: V };

export type PastRoster = {
  /** The key of its event. */
  readonly value: string;
  readonly label: string;
  /** Who would be new here. */
  readonly names: readonly string[];
};

/** The other events with racers, the latest first, and who of them is not here yet. */
export function pastRosters(
  here: Entry<EventRecord>,
  events: readonly Entry<EventRecord>[],
  machines: readonly Entry<MachineRecord>[],
): readonly PastRoster[] {
  return events
    .filter(({ id, value }) => id !== here.id && !value.demo && value.machineIds.length > 0)
    .sort((a, b) => startOf(b.value) - startOf(a.value))
    .map(({ id, value }) => {
      const newcomers = machines.filter((machine) => !here.value.machineIds.includes(machine.id));
      return { value: id, label: labelOf(value), names: [...rosterNames(value, newcomers).values()] };
    });
}

function startOf({ event }: EventRecord): number {
  return Math.min(...event.runs.map(({ start }) => instantFromJson(start)));
}

function labelOf({ event }: EventRecord): string {
  const [first] = event.runs;
  return first === undefined
    ? event.name
    : `${event.name}, ${dayText(instantFromJson(first.start), event.timezone)}`;
}

/** More than these are counted, not named. */
const MOST_NAMED = 8;

export function takenAlongWords({ names }: Pick<PastRoster, 'names'>): string {
  if (names.length === 0) return 'Everybody of that event is on this roster already.';
  const first = names.slice(0, MOST_NAMED).map(isolated);
  const rest = names.length - first.length;
  return `${counted(names.length, 'racer')}: ${listing(rest === 0 ? first : [...first, `${rest} more`])}.`;
}
