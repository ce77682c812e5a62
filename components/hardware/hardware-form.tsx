'use client';

import { useState } from 'react';
import { EditorForm } from '@/components/draft/editor-form';
import { wholeOf } from '@/components/draft/part';
import { useDraft } from '@/components/draft/use-draft';
import { type Save, useForm } from '@/components/draft/use-form';
import { NumberField } from '@/components/ui/number-field';
import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import { Switch } from '@/components/ui/switch';
import { TextField } from '@/components/ui/text-field';
import { type HardwareKind, hardwareShift } from '@/lib/carb/hardware';
import { hardwareKindText, hardwareShiftSentence } from '@/lib/words/hardware';
import {
  amountUnit,
  type HardwareDraft,
  hardwareLabel,
  type NewHardware,
  readHardware,
} from './hardware-draft';

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

type HardwareFormProps = {
  readonly today: string;
  readonly onSave: Save<NewHardware>;
  readonly onCancel: () => void;
};

export function HardwareForm({ today, onSave, onCancel }: HardwareFormProps) {
  const [start] = useState<HardwareDraft>(() => ({
    kind: 'airbox-off',
    amount: '',
    unknownFuel: false,
    on: today,
    note: '',
  }));
  const draft = useDraft({ key: 'hardware', initial: start, shape: start });
  const form = useForm({ draft, read: readHardware, labelOf: hardwareLabel, onSave });
  const { value, set } = wholeOf(draft);
  const unit = amountUnit(value);
  const typed = readHardware(value).value;
  const shift = typed === null ? null : hardwareShift(typed);
  return (
    <EditorForm title="Hardware" form={form} draft={draft} saveLabel="Save change" onCancel={onCancel}>
      <Select
        {...form.field('kind')}
        value={value.kind}
        options={KINDS.map((kind) => ({ value: kind, label: hardwareKindText(kind) }))}
        onChange={(kind) => set('kind', kind)}
      />
      {value.kind === 'fuel' ? (
        <Switch
          label="Race fuel, its ethanol not stated"
          checked={value.unknownFuel}
          onChange={(unknown) => set('unknownFuel', unknown)}
        />
      ) : null}
      <Columns>
        {unit === null ? null : (
          <NumberField
            {...form.field('amount')}
            unit={unit}
            value={value.amount}
            onChange={(amount) => set('amount', amount)}
          />
        )}
        <TextField {...form.field('on')} type="date" value={value.on} onChange={(on) => set('on', on)} />
        <TextField
          {...form.field('note')}
          maxLength={500}
          value={value.note}
          onChange={(note) => set('note', note)}
        />
      </Columns>
      {shift?.ok ? <p>{hardwareShiftSentence(shift.value)}</p> : null}
    </EditorForm>
  );
}
