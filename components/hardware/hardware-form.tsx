'use client';

import { EditorForm } from '@/components/draft/editor-form';
import { useFields } from '@/components/draft/use-fields';
import type { Save } from '@/components/draft/use-form';
import { Columns } from '@/components/ui/stack';
import { hardwareShift } from '@/lib/carb/hardware';
import {
  HARDWARE,
  type NewHardware,
  newHardwareDraft,
  readHardware,
} from '@/lib/fields/hardware/hardware-rows';
import { hardwareShiftSentence } from '@/lib/words/hardware';

type HardwareFormProps = {
  readonly today: string;
  readonly onSave: Save<NewHardware>;
  readonly onCancel: () => void;
};

export function HardwareForm({ today, onSave, onCancel }: HardwareFormProps) {
  const { draft, form, field } = useFields({
    key: 'hardware',
    table: HARDWARE,
    initial: () => newHardwareDraft(today),
    read: readHardware,
    onSave,
  });
  const typed = readHardware(draft.value).value;
  const shift = typed === null ? null : hardwareShift(typed);
  return (
    <EditorForm title="Hardware" form={form} draft={draft} saveLabel="Save change" onCancel={onCancel}>
      {field('kind')}
      {field('unknownFuel')}
      <Columns>
        {field('amount')}
        {field('on')}
        {field('note')}
      </Columns>
      {shift?.ok ? <p>{hardwareShiftSentence(shift.value)}</p> : null}
    </EditorForm>
  );
}
