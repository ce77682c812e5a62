'use client';

import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { Columns } from '@/components/ui/stack';
import { markingDoubt } from '@/lib/carb/marking-doubt';
import { fieldReader } from '@/lib/fields/field-reader';
import type { MachineDraft } from '@/lib/fields/machine/machine-rows';
import { readBox, readMains } from '@/lib/fields/machine/read-jets';
import { markingQuestion } from '@/lib/words/marking';
import type { MachineFields } from './machine-fields';

/** Asks once where the jets look as if they were marked the other way; one tap answers. */
export function MarkingQuestion({ draft }: Pick<MachineFields, 'draft'>) {
  const { marking, markingSure } = draft.value;
  const doubt = markingSure === marking ? null : doubtOf(draft.value);
  if (doubt === null || marking === 'list') return null;
  const answer = (kind: 'flow' | 'bore') =>
    draft.change(null, (before) => ({ ...before, marking: kind, markingSure: kind }));
  const [given, other] = marking === 'bore' ? (['bore', 'flow'] as const) : (['flow', 'bore'] as const);
  return (
    <Notice
      tone="caution"
      title={markingQuestion(doubt)}
      act={
        <Columns>
          <Button onClick={() => answer(other)}>They are marked by {other}</Button>
          <Button onClick={() => answer(given)}>No, by {given}</Button>
        </Columns>
      }
    />
  );
}

/** Judged by what can be read so far: the box alone, or the mains alone. */
function doubtOf(draft: MachineDraft) {
  if (draft.marking === 'list') return null;
  const reader = fieldReader(draft.units);
  const box = readBox(draft.box, reader) ?? [];
  const carburettors = readMains(draft, reader).flatMap(({ main }) => (main === undefined ? [] : [{ main }]));
  return markingDoubt({ marking: { kind: draft.marking }, box, carburettors });
}
