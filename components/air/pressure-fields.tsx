'use client';

import type { FieldBinding } from '@/components/draft/use-form';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import type { PressureKind } from '@/lib/air/air';
import type { UnitChoice } from '@/lib/units/choice';
import { pressureEstimateSentence } from '@/lib/words/assumptions';

const KINDS: readonly { readonly value: PressureKind; readonly label: string }[] = [
  { value: 'standard', label: 'Not known' },
  { value: 'station', label: 'Station' },
  { value: 'altimeter', label: 'Altimeter setting' },
  { value: 'sea-level', label: 'Sea level' },
];

const MEANING: Readonly<Record<PressureKind, string>> = {
  standard: pressureEstimateSentence(),
  station: 'What a barometer at the track shows, not corrected for height. It falls as you climb.',
  altimeter: 'What an airport report gives (QNH), near 29.92 inHg or 1013 hPa at any height.',
  'sea-level': 'What phones and weather maps show, near 29.92 inHg or 1013 hPa at any height.',
};

const NAMES: Readonly<Record<PressureKind, string>> = {
  standard: 'Pressure',
  station: 'Station pressure',
  altimeter: 'Altimeter setting',
  'sea-level': 'Sea-level pressure',
};

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
      <Choice {...kindField} hint={MEANING[kind]} value={kind} options={KINDS} onChange={onKind} />
      {kind === 'standard' ? null : (
        <NumberField
          {...pressureField}
          label={NAMES[kind]}
          value={pressure}
          onChange={onPressure}
          unit={units.pressure}
        />
      )}
    </>
  );
}
