'use client';

import { NarrowColumns } from '@/components/draft/narrow-columns';
import { Section } from '@/components/ui/section';
import { fieldReader } from '@/lib/fields/field-reader';
import type { MachineDraft } from '@/lib/fields/machine/machine-rows';
import { readBox, readMains } from '@/lib/fields/machine/read-jets';
import { boxHints, boxSummary } from '@/lib/words/box-hints';
import type { MachineFields } from './machine-fields';

/** The jets a racer owns. */
export function BoxFields({ draft, field }: MachineFields) {
  return (
    <Section title="Box: the main jets you own">
      {field('box.how')}
      {draft.value.box.how === 'typed' ? (
        field('box.text')
      ) : (
        <NarrowColumns>
          {field('box.from')}
          {field('box.to')}
          {field('box.by')}
          {field('box.each')}
        </NarrowColumns>
      )}
      <BoxPreview draft={draft.value} />
    </Section>
  );
}

/** What the box was understood to be, as soon as it can be read. */
function BoxPreview({ draft }: { readonly draft: MachineDraft }) {
  const reader = fieldReader(draft.units);
  const box = readBox(draft.box, reader);
  const mains = readMains(draft, reader).flatMap(({ main }) => (main === undefined ? [] : [main]));
  if (box === undefined || box.length === 0) return null;
  const hints = mains.length === Number(draft.carburettors) ? boxHints(box, mains) : [];
  return (
    <div>
      <p>{boxSummary(box)}</p>
      {hints.map((hint) => (
        <p key={hint}>{hint}</p>
      ))}
    </div>
  );
}
