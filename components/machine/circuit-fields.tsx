'use client';

import { Fold } from '@/components/draft/fold';
import { NarrowColumns } from '@/components/draft/narrow-columns';
import { type Part, part } from '@/components/draft/part';
import type { FormState } from '@/components/draft/use-form';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Stack } from '@/components/ui/stack';
import { Switch } from '@/components/ui/switch';
import { TextField } from '@/components/ui/text-field';
import type { NeedleDraft, PilotDraft, TrimDraft } from './machine-draft';
import { circuitsNow } from './now-words';
import type { SectionProps } from './section-props';

const SCREWS: readonly { readonly value: PilotDraft['screw']; readonly label: string }[] = [
  { value: 'fuel', label: 'Fuel screw: out is richer' },
  { value: 'air', label: 'Air screw: out is leaner' },
];

/** The circuits beside the main; none is needed for a plan. */
export function CircuitFields({ draft, form }: SectionProps) {
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

function TrimFields({ trim, form }: { readonly trim: Part<TrimDraft>; readonly form: FormState }) {
  const { on, lowest, highest, baseline, percentPerPosition } = trim.value;
  return (
    <>
      <Switch
        label="It has a fuel trim turned from outside"
        hint="Higher is richer. A step costs seconds, so the plan turns it before it swaps jets."
        checked={on}
        onChange={(next) => trim.set('on', next)}
      />
      {on ? (
        <NarrowColumns>
          <NumberField
            {...form.field('trim.lowest')}
            signed
            value={lowest}
            onChange={(text) => trim.set('lowest', text)}
          />
          <NumberField
            {...form.field('trim.highest')}
            signed
            value={highest}
            onChange={(text) => trim.set('highest', text)}
          />
          <NumberField
            {...form.field('trim.baseline')}
            signed
            value={baseline}
            onChange={(text) => trim.set('baseline', text)}
          />
          <NumberField
            {...form.field('trim.percentPerPosition')}
            unit="%"
            value={percentPerPosition}
            onChange={(text) => trim.set('percentPerPosition', text)}
          />
        </NarrowColumns>
      ) : null}
    </>
  );
}

type PilotNumber = 'jet' | 'turns' | 'leastTurns' | 'mostTurns' | 'turnsPerSize' | 'percentPerSize';

function PilotFields({ pilot, form }: { readonly pilot: Part<PilotDraft>; readonly form: FormState }) {
  const { on, jets, screw } = pilot.value;
  const number = (key: PilotNumber, unit?: string) => (
    <NumberField
      {...form.field(`pilot.${key}`)}
      unit={unit}
      value={pilot.value[key]}
      onChange={(text) => pilot.set(key, text)}
    />
  );
  return (
    <>
      <Switch
        label="Work out the pilot circuit too"
        hint="Turns as they were when the jets were proven, and how far the screw may go."
        checked={on}
        onChange={(next) => pilot.set('on', next)}
      />
      {on ? (
        <>
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
        </>
      ) : null}
    </>
  );
}

function NeedleFields({ needle, form }: { readonly needle: Part<NeedleDraft>; readonly form: FormState }) {
  const { on, groove, grooves, percentPerGroove } = needle.value;
  return (
    <>
      <Switch
        label="Work out the needle clip too"
        hint="Grooves count from the top of the needle; 1 is leanest."
        checked={on}
        onChange={(next) => needle.set('on', next)}
      />
      {on ? (
        <NarrowColumns>
          <NumberField
            {...form.field('needle.groove')}
            value={groove}
            onChange={(text) => needle.set('groove', text)}
          />
          <NumberField
            {...form.field('needle.grooves')}
            value={grooves}
            onChange={(text) => needle.set('grooves', text)}
          />
          <NumberField
            {...form.field('needle.percentPerGroove')}
            unit="%"
            value={percentPerGroove}
            onChange={(text) => needle.set('percentPerGroove', text)}
          />
        </NarrowColumns>
      ) : null}
    </>
  );
}
