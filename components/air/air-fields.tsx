'use client';

import type { Part } from '@/components/draft/part';
import type { FormState } from '@/components/draft/use-form';
import { NumberField } from '@/components/ui/number-field';
import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import type { UnitChoice } from '@/lib/units/choice';
import { humidityAssumedSentence } from '@/lib/words/assumptions';
import type { AirDraft, HumidityKind } from './air-draft';
import { AirReadout } from './air-readout';
import { PressureFields } from './pressure-fields';
import { typedAir } from './read-air';
import { TypedPressureQuestion } from './typed-pressure-question';

const HUMIDITIES: readonly { readonly value: HumidityKind; readonly label: string }[] = [
  { value: 'unknown', label: 'Not known' },
  { value: 'relative', label: 'Relative humidity' },
  { value: 'dew-point', label: 'Dew point' },
  { value: 'frost-point', label: 'Frost point' },
];

type AirFieldsProps = {
  readonly air: Part<AirDraft>;
  /** Before the names of the fields: "air" for "air.temperature". */
  readonly group: string;
  readonly form: FormState;
  readonly units: UnitChoice;
};

/** One air in the form it is known in, and what it comes to. */
export function AirFields({ air, group, form, units }: AirFieldsProps) {
  const { temperature, elevation, pressureKind, pressure, humidityKind, humidity } = air.value;
  const kindName = HUMIDITIES.find(({ value }) => value === humidityKind)?.label ?? 'Humidity';
  return (
    <>
      <Columns>
        <NumberField
          {...form.field(`${group}.temperature`)}
          signed
          unit={`°${units.temperature}`}
          value={temperature}
          onChange={(text) => air.set('temperature', text)}
        />
        <NumberField
          {...form.field(`${group}.elevation`)}
          unit={units.elevation}
          value={elevation}
          onChange={(text) => air.set('elevation', text)}
        />
      </Columns>
      <PressureFields
        kind={pressureKind}
        pressure={pressure}
        units={units}
        onKind={(kind) => air.set('pressureKind', kind)}
        onPressure={(text) => air.set('pressure', text)}
        kindField={form.field(`${group}.pressureKind`)}
        pressureField={form.field(`${group}.pressure`)}
      />
      <TypedPressureQuestion air={air.value} units={units} onAnswered={air.setAll} />
      <Columns>
        <Select
          {...form.field(`${group}.humidityKind`)}
          hint={humidityKind === 'unknown' ? humidityAssumedSentence() : undefined}
          value={humidityKind}
          options={HUMIDITIES}
          onChange={(kind) => air.set('humidityKind', kind)}
        />
        {humidityKind === 'unknown' ? null : (
          <NumberField
            {...form.field(`${group}.humidity`)}
            label={kindName}
            signed={humidityKind !== 'relative'}
            unit={humidityKind === 'relative' ? '%' : `°${units.temperature}`}
            value={humidity}
            onChange={(text) => air.set('humidity', text)}
          />
        )}
      </Columns>
      <AirReadout air={typedAir(air.value, units)} units={units} />
    </>
  );
}
