'use client';

import { fieldReader } from '@/components/draft/field-reader';
import { NarrowColumns } from '@/components/draft/narrow-columns';
import { part } from '@/components/draft/part';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Section } from '@/components/ui/section';
import { TextArea } from '@/components/ui/text-area';
import { boxHints, boxSummary } from '@/lib/words/box-hints';
import type { BoxDraft, MachineDraft } from './machine-draft';
import { readBox, readMains } from './read-jets';
import type { MachineSectionProps } from './section-props';

const WAYS: readonly { readonly value: BoxDraft['how']; readonly label: string }[] = [
  { value: 'typed', label: 'Type them' },
  { value: 'range', label: 'From … to …' },
];

/** The jets a racer owns. */
export function BoxFields({ draft, form }: MachineSectionProps) {
  const box = part(draft, 'box');
  const { how, text, from, to, by, each } = box.value;
  return (
    <Section title="Box: the main jets you own">
      <Choice {...form.field('box.how')} value={how} options={WAYS} onChange={(way) => box.set('how', way)} />
      {how === 'typed' ? (
        <TextArea
          {...form.field('box.text')}
          hint="Size, then x and how many, the fitted ones too: 400x3 410x3 420"
          rows={3}
          value={text}
          onChange={(next) => box.set('text', next)}
        />
      ) : (
        <NarrowColumns>
          <NumberField {...form.field('box.from')} value={from} onChange={(next) => box.set('from', next)} />
          <NumberField {...form.field('box.to')} value={to} onChange={(next) => box.set('to', next)} />
          <NumberField {...form.field('box.by')} value={by} onChange={(next) => box.set('by', next)} />
          <NumberField {...form.field('box.each')} value={each} onChange={(next) => box.set('each', next)} />
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
