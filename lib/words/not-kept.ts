import type { ChangeProblem } from '@/lib/store/change-record';
import type { EventRecord, MachineRecord, Stored } from '@/lib/store/records';

/** Why what a person did was not kept, and what to do next. */
export function notKeptSentence({ code }: Pick<ChangeProblem, 'code'>): string {
  if (code === 'invalid') return 'The store would not take this. Check the fields once more.';
  if (code === 'closed') return 'The store is closed. Reload the page; what you typed is kept.';
  return 'That was not kept: it was changed or removed meanwhile. Look again and repeat it.';
}

/** Many records at once stand or fall together. */
export const NONE_KEPT =
  'Nothing was changed: the store of this browser would not take it. Reload the page and try again.';

/** What another tab was told since is newer than the way back. */
export const NOT_TAKEN_BACK =
  'Not taken back: something else was told meanwhile, and that stays. Look again and say what is true now.';

/** What was done and is not any more, told to the ear. */
export const takenBackSentence = (done: string): string => `Taken back: ${done}`;

/** Where a form is saved over a record that another tab has changed since; null where it was deleted there. */
export function savedOverSentence(theirs: Stored<EventRecord | MachineRecord> | null): string {
  if (theirs === null)
    return 'This was deleted in another tab. Save again to put it back with what you typed, or cancel to leave it deleted.';
  const { value } = theirs;
  const { name } = 'event' in value ? value.event : value.machine;
  return `This was changed elsewhere, perhaps in another tab, while the form was open; it is now called ${name}. Save again to put your version over it, or cancel to keep the other.`;
}
