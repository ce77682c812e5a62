import type { Untaken } from '@/components/draft/untaken';
import { clockOf } from '@/lib/fields/clock-text';
import { withClock } from '@/lib/fields/hours/edit-rows';
import type { HoursDraft } from '@/lib/fields/hours/hours-draft';
import { hasPressure, takePasted } from '@/lib/fields/hours/take-pasted';
import type { PastedHours, PasteProblem } from '@/lib/hours/pasted';
import type { Result } from '@/lib/result/result';
import { counted } from '@/lib/words/listing';

type Around = { readonly reading: Result<PastedHours, PasteProblem> | null; readonly zone: string };

/** A pasted column that nobody took over, or a time that was never added; null where all is in the hours. */
export function untakenHours(draft: HoursDraft, { reading, zone }: Around): Untaken<HoursDraft> | null {
  if (reading !== null) return untakenPaste(reading);
  const clock = draft.addedClock.trim();
  if (clock === '') return null;
  const read = clockOf(clock);
  const added = read === null ? null : withClock(draft, read, zone);
  return {
    words: `The time “${clock}” was typed and not added.`,
    take: added === null ? null : (before) => ({ ...before, rows: added.rows, addedClock: '' }),
    leave: (before) => ({ ...before, addedClock: '' }),
  };
}

function untakenPaste(reading: Result<PastedHours, PasteProblem>): Untaken<HoursDraft> {
  const leave = (before: HoursDraft) => ({ ...before, pasted: '' });
  if (!reading.ok)
    return {
      words: 'The pasted text is not in the hours: it cannot be read yet. Put it right under “Paste hours”.',
      take: null,
      leave,
    };
  const pasted = reading.value;
  const left = pasted.skipped.length + pasted.dropped.length;
  const asked = hasPressure(pasted);
  return {
    words: [
      `${counted(pasted.rows.length, 'pasted hour')} not in the hours yet.`,
      ...(left === 0
        ? []
        : [`${counted(left, 'line')} of it cannot be used; they are named under “Paste hours”.`]),
      ...(asked ? ['Say there which kind of pressure it has and take it over.'] : []),
    ].join(' '),
    take: asked ? null : (before) => takePasted(before, pasted, null),
    leave,
  };
}
