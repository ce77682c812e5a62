'use client';

import { fieldReader } from '@/components/draft/field-reader';
import { wholeOf } from '@/components/draft/part';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { Columns } from '@/components/ui/stack';
import { markingDoubt } from '@/lib/carb/marking-doubt';
import { markingQuestion } from '@/lib/words/marking';
import type { MachineDraft } from './machine-draft';
import { readBox, readMains } from './read-jets';
import type { MachineSectionProps } from './section-props';

/** Asks once where the jets look as if they were marked the other way; one tap answers. */
export function MarkingQuestion({ draft }: Pick<MachineSectionProps, 'draft'>) {
  const whole = wholeOf(draft);
  const { marking, markingSure } = draft.value;
  const doubt = markingSure === marking ? null : doubtOf(draft.value);
  if (doubt === null || marking === 'list') return null;
  const answer = (kind: 'flow' | 'bore') => whole.setAll({ marking: kind, markingSure: kind });
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
