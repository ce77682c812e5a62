'use client';

import type { FieldBinding } from '@/components/draft/use-form';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import type { PressureKind } from '@/lib/air/air';
import type { UnitChoice } from '@/lib/units/choice';
import { PRESSURE_CHOICES, PRESSURE_MEANINGS, PRESSURE_NAMES } from '@/lib/words/pressure-kinds';

const KINDS: readonly { readonly value: PressureKind; readonly label: string }[] = [
  { value: 'standard', label: 'Not known' },
  ...PRESSURE_CHOICES,
];

type PressureFieldsProps = {
  readonly kind: PressureKind;
  readonly pressure: string;
  readonly units: UnitChoice;
  readonly onKind: (kind: PressureKind) => void;
  readonly onPressure: (text: string) => void;
  readonly kindField: FieldBinding;
  readonly pressureField: FieldBinding;
};

/** A pressure with its kind, never one without the other: the same number means four different airs. */
export function PressureFields(props: PressureFieldsProps) {
  const { kind, pressure, units, onKind, onPressure, kindField, pressureField } = props;
  return (
    <>
      <Choice {...kindField} hint={PRESSURE_MEANINGS[kind]} value={kind} options={KINDS} onChange={onKind} />
      {kind === 'standard' ? null : (
        <NumberField
          {...pressureField}
          label={PRESSURE_NAMES[kind]}
          value={pressure}
          onChange={onPressure}
          unit={units.pressure}
        />
      )}
    </>
  );
}
