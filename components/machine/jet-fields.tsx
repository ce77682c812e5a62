'use client';

import { NarrowColumns } from '@/components/draft/narrow-columns';
import { NumberField } from '@/components/ui/number-field';
import { Section } from '@/components/ui/section';
import { Stack } from '@/components/ui/stack';
import { Switch } from '@/components/ui/switch';
import { sixMains } from '@/lib/fields/machine/draft-from-machine';
import type { MachineFields } from './machine-fields';
import { MarkingQuestion } from './marking-question';

/** Name, carburettors and the mains that were proven. */
export function JetFields(fields: MachineFields) {
  const { draft, field } = fields;
  return (
    <Stack>
      {field('name')}
      {field('carburettors')}
      <MainFields {...fields} />
      {field('marking')}
      <MarkingQuestion draft={draft} />
      {draft.value.marking === 'list' ? field('list') : null}
    </Stack>
  );
}

function MainFields({ draft, form, field }: MachineFields) {
  const { change } = draft;
  const { carburettors, staggered, mains } = draft.value;
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
    <Section title="Main jets that were good">
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
        field('main', {
          hint: count > 1 ? `The same in ${count === 2 ? 'both' : `all ${count}`} carburettors.` : undefined,
        })
      )}
      {count > 1 ? (
        <Switch label="Different jets in the carburettors" checked={staggered} onChange={stagger} />
      ) : null}
    </Section>
  );
}
