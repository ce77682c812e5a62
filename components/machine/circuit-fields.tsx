'use client';

import { Fold } from '@/components/draft/fold';
import { NarrowColumns } from '@/components/draft/narrow-columns';
import { type Part, part } from '@/components/draft/part';
import { Switched } from '@/components/draft/switched';
import type { FormState } from '@/components/draft/use-form';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Stack } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { NeedleDraft, PilotDraft, TrimDraft } from './machine-draft';
import { circuitsNow } from './now-words';
import type { MachineSectionProps } from './section-props';

const SCREWS: readonly { readonly value: PilotDraft['screw']; readonly label: string }[] = [
  { value: 'fuel', label: 'Fuel screw: out is richer' },
  { value: 'air', label: 'Air screw: out is leaner' },
];

/** The circuits beside the main; none is needed for a plan. */
export function CircuitFields({ draft, form }: MachineSectionProps) {
  const { trim, pilot, needle } = draft.value;
  const bad = ['trim.', 'pilot.', 'needle.'].some((group) => form.hasErrors(group));
  return (
    <Fold
      title="Trim, pilot and needle"
      now={circuitsNow(draft.value)}
      open={trim.on || pilot.on || needle.on || bad}
    >
      <Stack>
        <TrimFields trim={part(draft, 'trim')} form={form} />
        <PilotFields pilot={part(draft, 'pilot')} form={form} />
        <NeedleFields needle={part(draft, 'needle')} form={form} />
      </Stack>
    </Fold>
  );
}

type TrimNumber = 'lowest' | 'highest' | 'baseline' | 'percentPerPosition';

function TrimFields({ trim, form }: { readonly trim: Part<TrimDraft>; readonly form: FormState }) {
  const number = (key: TrimNumber, kind: { readonly unit?: string; readonly signed?: boolean }) => (
    <NumberField
      {...form.field(`trim.${key}`)}
      {...kind}
      value={trim.value[key]}
      onChange={(text) => trim.set(key, text)}
    />
  );
  return (
    <Switched
      label="It has a fuel trim turned from outside"
      hint="Higher is richer. A step costs seconds, so the plan turns it before it swaps jets."
      group={trim}
    >
      <NarrowColumns>
        {number('lowest', { signed: true })}
        {number('highest', { signed: true })}
        {number('baseline', { signed: true })}
        {number('percentPerPosition', { unit: '%' })}
      </NarrowColumns>
    </Switched>
  );
}

type PilotNumber = 'jet' | 'turns' | 'leastTurns' | 'mostTurns' | 'turnsPerSize' | 'percentPerSize';

function PilotFields({ pilot, form }: { readonly pilot: Part<PilotDraft>; readonly form: FormState }) {
  const { jets, screw } = pilot.value;
  const number = (key: PilotNumber, unit?: string) => (
    <NumberField
      {...form.field(`pilot.${key}`)}
      unit={unit}
      value={pilot.value[key]}
      onChange={(text) => pilot.set(key, text)}
    />
  );
  return (
    <Switched
      label="Work out the pilot circuit too"
      hint="Turns as they were when the jets were proven, and how far the screw may go."
      group={pilot}
    >
      <Choice
        {...form.field('pilot.screw')}
        value={screw}
        options={SCREWS}
        onChange={(kind) => pilot.set('screw', kind)}
      />
      <NarrowColumns>
        {number('jet')}
        {number('turns')}
        {number('leastTurns')}
        {number('mostTurns')}
        {number('turnsPerSize')}
        {number('percentPerSize', '%')}
      </NarrowColumns>
      <TextField
        {...form.field('pilot.jets')}
        hint="For example 35 37.5 40; leave empty if only the one fitted."
        value={jets}
        onChange={(text) => pilot.set('jets', text)}
      />
    </Switched>
  );
}

type NeedleNumber = 'groove' | 'grooves' | 'percentPerGroove';

function NeedleFields({ needle, form }: { readonly needle: Part<NeedleDraft>; readonly form: FormState }) {
  const number = (key: NeedleNumber, unit?: string) => (
    <NumberField
      {...form.field(`needle.${key}`)}
      unit={unit}
      value={needle.value[key]}
      onChange={(text) => needle.set(key, text)}
    />
  );
  return (
    <Switched
      label="Work out the needle clip too"
      hint="Grooves count from the top of the needle; 1 is leanest."
      group={needle}
    >
      <NarrowColumns>
        {number('groove')}
        {number('grooves')}
        {number('percentPerGroove', '%')}
      </NarrowColumns>
    </Switched>
  );
}
