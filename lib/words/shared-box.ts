import type { BoxTextProblem } from '@/lib/carb/box-text';
import type { Box } from '@/lib/carb/machine';
import { isSeen } from '@/lib/contract/name-text';
import type { Result } from '@/lib/result/result';
import type { MachineRecord } from '@/lib/store/records';
import { boxProblemWords } from './box-text';

/** What the form of a shared box says. */
export const SHARED_BOX = {
  what: 'Everybody who shares it is planned from the same jets; where their swaps ask for more than it holds, the borrowing list says so.',
  gone: 'This box was deleted in another tab. What you typed stays; saving puts it back.',
} as const;

type BoxTyped = {
  readonly name: string;
  readonly box: Result<Box, BoxTextProblem>;
  readonly machines: readonly { readonly id: string; readonly value: MachineRecord }[];
  readonly sharers: readonly string[];
};

/** Why a box cannot be shared as it stands, and what to do; null where it can. */
export function sharedBoxProblem({ name, box, machines, sharers }: BoxTyped): string | null {
  if (!isSeen(name)) return 'Give the box a name, such as Trailer A.';
  if (!box.ok) return `Jets in it: ${boxProblemWords(box.reason)}`;
  const markings = new Set(
    machines
      .filter(({ id }) => sharers.includes(id))
      .map(({ value }) => JSON.stringify(value.machine.jetMarking)),
  );
  if (markings.size > 1)
    return 'These machines mark their jets in different ways, so a 410 of one is another jet than a 410 of the other. Share the box only among machines marked alike.';
  return null;
}
