'use client';

import { useState } from 'react';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { HardwareKind } from '@/lib/carb/hardware';
import { standardOf } from '@/lib/compare/compare';
import { isSeen } from '@/lib/contract/name-text';
import type { Measure } from '@/lib/fields/compare/pull-rows';
import { amountUnit } from '@/lib/fields/hardware/hardware-rows';
import { STANDARD_IDS, STANDARDS } from '@/lib/power/standards';
import type { ComparisonRecord, MachineRecord, Stored } from '@/lib/store/records';
import { machineNames } from '@/lib/store/roster-names';
import { readNumber } from '@/lib/units/entry';
import { numberText } from '@/lib/units/entry-text';
import { standardText } from '@/lib/words/fair';
import { hardwareKindText } from '@/lib/words/hardware';

export type ChangeComparison = (change: Partial<ComparisonRecord>) => void;

type FieldsProps = {
  readonly record: ComparisonRecord;
  readonly machines: readonly Stored<MachineRecord>[];
  readonly measure: Measure;
  readonly onMeasure: (measure: Measure) => void;
  readonly onChange: ChangeComparison;
};

const MEASURES: readonly { readonly value: Measure; readonly label: string }[] = [
  { value: 'power', label: 'Power on a dyno' },
  { value: 'time', label: 'Time over a distance' },
  { value: 'speed', label: 'Top speed' },
];

const KINDS: readonly HardwareKind[] = [
  'airbox-off',
  'airbox-on',
  'open-filters',
  'pipe',
  'bored',
  'big-bore',
  'compression',
  'fuel',
];

/** What is compared, on which machine, by which measure and which standard. Each change is kept at once. */
export function ComparisonFields({ record, machines, measure, onMeasure, onChange }: FieldsProps) {
  const measured = record.pulls.length > 0;
  return (
    <>
      <Columns>
        <KeptText
          label="Name"
          text={record.name}
          most={80}
          onKeep={(name) => isSeen(name) && onChange({ name })}
        />
        <KeptText
          label="The part"
          hint="What was changed between before and after."
          text={record.part}
          most={200}
          onKeep={(part) => onChange({ part })}
        />
        <Select
          label="Machine"
          value={record.machineId ?? ''}
          options={[
            { value: '', label: 'Choose' },
            ...[...machineNames(machines)].map(([value, label]) => ({ value, label })),
          ]}
          onChange={(id) => onChange({ machineId: id === '' ? null : id })}
        />
        <Select
          label="Correction standard"
          value={standardOf(record)}
          options={STANDARD_IDS.map((id) => ({ value: id, label: standardText(STANDARDS[id]) }))}
          onChange={(standard) => onChange({ standard })}
        />
      </Columns>
      {measured ? null : (
        <Choice label="What was measured" value={measure} options={MEASURES} onChange={onMeasure} />
      )}
      <PartKind record={record} onChange={onChange} />
    </>
  );
}

/** Some parts move the mixture by themselves; then the right jets moved too, and that is not the part's power. */
function PartKind({ record, onChange }: Pick<FieldsProps, 'record' | 'onChange'>) {
  const { hardware } = record;
  const kind = hardware?.kind ?? '';
  const unit = hardware === undefined ? null : amountUnit({ kind: hardware.kind, unknownFuel: false });
  const inUnit = kind === 'fuel' ? 100 : 1;
  return (
    <Columns>
      <Select
        label="Does the part move the mixture by itself?"
        hint="Then being leaner or richer after it is counted as mixture, as far as that is known."
        value={kind}
        options={[
          { value: '', label: 'No, or nobody knows' },
          ...KINDS.map((each) => ({ value: each, label: hardwareKindText(each) })),
        ]}
        onChange={(next) => onChange({ hardware: next === '' ? undefined : { kind: next, amount: null } })}
      />
      {hardware === undefined || unit === null ? null : (
        <KeptNumber
          label="By how much"
          unit={unit}
          value={hardware.amount === null ? null : hardware.amount * inUnit}
          onKeep={(amount) => onChange({ hardware: { ...hardware, amount: amount / inUnit } })}
        />
      )}
    </Columns>
  );
}

type KeptTextProps = {
  readonly label: string;
  readonly hint?: string;
  readonly text: string;
  readonly most: number;
  readonly onKeep: (text: string) => void;
};

/** A text that is kept when the field is left. */
function KeptText({ label, hint, text, most, onKeep }: KeptTextProps) {
  const [typed, setTyped] = useState(text);
  return (
    <TextField
      label={label}
      hint={hint}
      maxLength={most}
      value={typed}
      onChange={setTyped}
      onBlur={() => typed !== text && onKeep(typed)}
    />
  );
}

type KeptNumberProps = {
  readonly label: string;
  readonly unit: string;
  readonly value: number | null;
  readonly onKeep: (value: number) => void;
};

function KeptNumber({ label, unit, value, onKeep }: KeptNumberProps) {
  const [typed, setTyped] = useState(value === null ? '' : numberText(value));
  const read = readNumber(typed);
  return (
    <NumberField
      label={label}
      unit={unit}
      error={typed !== '' && !read.ok ? 'Type a number.' : undefined}
      value={typed}
      onChange={setTyped}
      onBlur={() => read.ok && read.value !== value && onKeep(read.value)}
    />
  );
}
