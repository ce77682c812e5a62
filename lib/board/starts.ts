import type { BoardNight } from '@/lib/contract/board';
import { entryId } from './board-requests';

/** When the runs of every machine start, by machine and in the order given. */
export function boardStarts({
  event,
  machines,
}: Pick<BoardNight, 'event' | 'machines'>): Readonly<Record<string, readonly string[]>> {
  return Object.fromEntries(
    machines.map((entry, i) => [entryId(entry, i), (entry.runs ?? event.runs).map(({ start }) => start)]),
  );
}
