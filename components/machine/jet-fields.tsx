'use client';

import { NarrowColumns } from '@/components/draft/narrow-columns';
import { wholeOf } from '@/components/draft/part';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Section } from '@/components/ui/section';
import { Stack } from '@/components/ui/stack';
import { Switch } from '@/components/ui/switch';
import { TextArea } from '@/components/ui/text-area';
import { TextField } from '@/components/ui/text-field';
import { type MachineDraft, MOST_CARBURETTORS, sixMains } from './machine-draft';
import { MarkingQuestion } from './marking-question';
import type { MachineSectionProps } from './section-props';

const COUNTS = Array.from({ length: MOST_CARBURETTORS }, (_, i) => ({
  value: String(i + 1),
  label: String(i + 1),
}));

const MARKINGS: readonly { readonly value: MachineDraft['marking']; readonly label: string }[] = [
  { value: 'flow', label: 'Flow' },
  { value: 'bore', label: 'Bore' },
  { value: 'list', label: 'My own list' },
];

const MARKING_HINTS: Readonly<Record<MachineDraft['marking'], string>> = {
  flow: 'The number goes with how much fuel passes: a 420 flows 5 % more than a 400.',
  bore: 'The number is the hole in hundredths of a millimetre: a 162 has a hole of 1.62 mm.',
  list: 'For jets of mixed makes, or measured ones.',
};

/** Name, carburettors and the mains that were proven. */
export function JetFields({ draft, form }: MachineSectionProps) {
  const whole = wholeOf(draft);
  const { name, carburettors, marking, list } = draft.value;
  return (
    <Stack>
      <TextField
        {...form.field('name')}
        value={name}
        maxLength={80}
        autoComplete="off"
        onChange={(text) => whole.set('name', text)}
      />
      <Choice
        {...form.field('carburettors')}
        value={carburettors}
        options={COUNTS}
        onChange={(count) => whole.set('carburettors', count)}
      />
      <MainFields draft={draft} form={form} />
      <Choice
        {...form.field('marking')}
        hint={MARKING_HINTS[marking]}
        value={marking}
        options={MARKINGS}
        onChange={(kind) => whole.set('marking', kind)}
      />
      <MarkingQuestion draft={draft} />
      {marking === 'list' ? (
        <TextArea
          {...form.field('list')}
          hint="One jet per line: the number on it, then its area or flow in any unit. 410 1.03"
          value={list}
          onChange={(text) => whole.set('list', text)}
        />
      ) : null}
    </Stack>
  );
}

function MainFields({ draft, form }: MachineSectionProps) {
  const { change } = draft;
  const { carburettors, staggered, main, mains } = draft.value;
  const count = Number(carburettors);
  function stagger(on: boolean) {
    // The one main stands in for those that were never typed, so that only the odd ones need changing.
    change(null, (before) => ({
      ...before,
      staggered: on,
      mains: on ? sixMains(before.mains.map((text) => text || before.main)) : before.mains,
    }));
  }
  function setMain(index: number, text: string) {
    change(`mains.${index}`, (before) => ({
      ...before,
      mains: before.mains.map((old, i) => (i === index ? text : old)),
    }));
  }
  return (
    <Section title="Main jets that were right">
      {staggered ? (
        <NarrowColumns>
          {mains.slice(0, count).map((text, i) => (
            <NumberField
              // biome-ignore lint/suspicious/noArrayIndexKey: carburettors are told apart by their place
              key={i}
              {...form.field(`mains.${i}`)}
              value={text}
              onChange={(next) => setMain(i, next)}
            />
          ))}
        </NarrowColumns>
      ) : (
        <NumberField
          {...form.field('main')}
          hint={count > 1 ? `The same in ${count === 2 ? 'both' : `all ${count}`} carburettors.` : undefined}
          value={main}
          onChange={(text) => change('main', (before) => ({ ...before, main: text }))}
        />
      )}
      {count > 1 ? (
        <Switch
          label="Different jets from carburettor to carburettor"
          checked={staggered}
          onChange={stagger}
        />
      ) : null}
    </Section>
  );
}
