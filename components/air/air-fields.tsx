'use client';

import type { ReactNode } from 'react';
import type { ChangeDraft } from '@/components/draft/use-draft';
import { Columns } from '@/components/ui/stack';
import type { AirDraft } from '@/lib/fields/air/air-rows';
import { typedAir } from '@/lib/fields/air/typed-air';
import type { UnitChoice } from '@/lib/units/choice';
import { AirReadout } from './air-readout';
import { TypedPressureQuestion } from './typed-pressure-question';

type HoldsAir = { readonly units: UnitChoice; readonly air: AirDraft };

type AirFieldsProps<D> = {
  readonly draft: { readonly value: D; readonly change: ChangeDraft<D> };
  readonly field: (name: `air.${keyof AirDraft}`) => ReactNode;
};

/** One air in the form it is known in, and what it comes to. */
export function AirFields<D extends HoldsAir>({ draft, field }: AirFieldsProps<D>) {
  const { air, units } = draft.value;
  return (
    <>
      <Columns>
        {field('air.temperature')}
        {field('air.elevation')}
      </Columns>
      {field('air.pressureKind')}
      {field('air.pressure')}
      <TypedPressureQuestion
        air={air}
        units={units}
        onAnswered={(values) =>
          draft.change(null, (before) => ({ ...before, air: { ...before.air, ...values } }))
        }
      />
      <Columns>
        {field('air.humidityKind')}
        {field('air.humidity')}
      </Columns>
      <AirReadout air={typedAir(air, units)} units={units} />
    </>
  );
}
