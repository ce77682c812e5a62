'use client';

import type { HumidityKind } from '@/components/air/air-draft';
import { AirReadout } from '@/components/air/air-readout';
import { PressureFields } from '@/components/air/pressure-fields';
import { TypedPressureQuestion } from '@/components/air/typed-pressure-question';
import { Fold } from '@/components/draft/fold';
import { type Part, part } from '@/components/draft/part';
import type { FormState } from '@/components/draft/use-form';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Section } from '@/components/ui/section';
import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { UnitChoice } from '@/lib/units/choice';
import { humidityAssumedSentence } from '@/lib/words/assumptions';
import type { BaselineDraft } from './machine-draft';
import { baselineMoreNow } from './now-words';
import { baselineAir } from './read-baseline';
import type { MachineSectionProps } from './section-props';

const JUDGED: readonly { readonly value: BaselineDraft['judged']; readonly label: string }[] = [
  { value: 'edge', label: 'On the edge' },
  { value: 'right', label: 'Right' },
  { value: 'size-rich', label: 'A size rich' },
];

const JUDGED_HINTS: Readonly<Record<BaselineDraft['judged'], string>> = {
  edge: 'Any leaner would have been too lean.',
  right: 'Neither lean nor rich by plugs, temperatures or piston wash.',
  'size-rich': 'Kept one size rich to be safe.',
};

const HUMIDITIES: readonly { readonly value: HumidityKind; readonly label: string }[] = [
  { value: 'unknown', label: 'Not known' },
  { value: 'relative', label: 'Relative humidity' },
  { value: 'dew-point', label: 'Dew point' },
  { value: 'frost-point', label: 'Frost point' },
];

type BaselineProps = {
  readonly baseline: Part<BaselineDraft>;
  readonly form: FormState;
  readonly units: UnitChoice;
};

/** The air the jets were proven in, and how sure the racer is. */
export function BaselineFields({ draft, form }: MachineSectionProps) {
  const baseline = part(draft, 'baseline');
  const { units } = draft.value;
  const { judged } = baseline.value;
  return (
    <Section title="Baseline: the air they were right in">
      <BaselineAirFields baseline={baseline} form={form} units={units} />
      <TypedPressureQuestion air={baseline.value} units={units} onAnswered={baseline.setAll} />
      <AirReadout air={baselineAir(baseline.value, units)} units={units} />
      <Choice
        {...form.field('baseline.judged')}
        hint={JUDGED_HINTS[judged]}
        value={judged}
        options={JUDGED}
        onChange={(how) => baseline.set('judged', how)}
      />
    </Section>
  );
}

function BaselineAirFields({ baseline, form, units }: BaselineProps) {
  const { temperature, elevation, pressureKind, pressure } = baseline.value;
  return (
    <>
      <Columns>
        <NumberField
          {...form.field('baseline.temperature')}
          signed
          unit={`°${units.temperature}`}
          value={temperature}
          onChange={(text) => baseline.set('temperature', text)}
        />
        <NumberField
          {...form.field('baseline.elevation')}
          unit={units.elevation}
          value={elevation}
          onChange={(text) => baseline.set('elevation', text)}
        />
      </Columns>
      <PressureFields
        kind={pressureKind}
        pressure={pressure}
        units={units}
        onKind={(kind) => baseline.set('pressureKind', kind)}
        onPressure={(text) => baseline.set('pressure', text)}
        kindField={form.field('baseline.pressureKind')}
        pressureField={form.field('baseline.pressure')}
      />
    </>
  );
}

function HumidityFields({ baseline, form, units }: BaselineProps) {
  const { humidityKind, humidity } = baseline.value;
  const name = HUMIDITIES.find(({ value }) => value === humidityKind)?.label ?? 'Humidity';
  return (
    <Columns>
      <Select
        {...form.field('baseline.humidityKind')}
        hint={humidityKind === 'unknown' ? humidityAssumedSentence() : undefined}
        value={humidityKind}
        options={HUMIDITIES}
        onChange={(kind) => baseline.set('humidityKind', kind)}
      />
      {humidityKind === 'unknown' ? null : (
        <NumberField
          {...form.field('baseline.humidity')}
          label={name}
          signed={humidityKind !== 'relative'}
          unit={humidityKind === 'relative' ? '%' : `°${units.temperature}`}
          value={humidity}
          onChange={(text) => baseline.set('humidity', text)}
        />
      )}
    </Columns>
  );
}

/** What else may be known of the baseline. */
export function BaselineMoreFields({ draft, form }: MachineSectionProps) {
  const baseline = part(draft, 'baseline');
  const { humidityKind, provenOn, note } = baseline.value;
  const bad = ['baseline.humidity', 'baseline.provenOn', 'baseline.note'].some((name) =>
    form.hasErrors(name),
  );
  return (
    <Fold
      title="More about the baseline"
      now={baselineMoreNow(draft.value)}
      open={humidityKind !== 'unknown' || bad}
    >
      <HumidityFields baseline={baseline} form={form} units={draft.value.units} />
      <Columns>
        <TextField
          {...form.field('baseline.provenOn')}
          type="date"
          value={provenOn}
          onChange={(date) => baseline.set('provenOn', date)}
        />
        <TextField
          {...form.field('baseline.note')}
          maxLength={500}
          value={note}
          onChange={(text) => baseline.set('note', text)}
        />
      </Columns>
    </Fold>
  );
}
