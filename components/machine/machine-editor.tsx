'use client';

import { useCallback, useState } from 'react';
import { EditorForm } from '@/components/draft/editor-form';
import { useFields } from '@/components/draft/use-fields';
import type { Save } from '@/components/draft/use-form';
import type { MachineJson } from '@/lib/contract/machine';
import { blankMachineDraft, draftFromMachine, MACHINE_SHAPE } from '@/lib/fields/machine/draft-from-machine';
import { MACHINE, type MachineDraft, machineLabel } from '@/lib/fields/machine/machine-rows';
import { readMachine } from '@/lib/fields/machine/read-machine';
import { withUnshown } from '@/lib/fields/machine/with-unshown';
import type { UnitChoice } from '@/lib/units/choice';
import { AdvancedFields } from './advanced-fields';
import { BaselineFields, BaselineMoreFields } from './baseline-fields';
import { BoxFields } from './box-fields';
import { CircuitFields } from './circuit-fields';
import { IntakeFields } from './intake-fields';
import { JetFields } from './jet-fields';
import { LimitsFields } from './limits-fields';

type MachineEditorProps = {
  /** Tells the kept typing of one machine from that of another: the record's id, or `new`. */
  readonly id: string;
  /** null for a new machine. */
  readonly initial: MachineJson | null;
  readonly units: UnitChoice;
  readonly onSave: Save<MachineJson>;
  readonly onCancel: () => void;
};

/**
 * The form of one machine. Mount it in a client component, keyed by the record:
 *
 *     <MachineEditor key={id} id={id} initial={machine} units={preferences} onSave={save} onCancel={close} />
 *
 * `onSave` gets a machine that its schema has accepted; what it answers, if anything, says why it was not kept and
 * leaves the form as it is. Unsaved typing is kept in the browser under `id` until it is saved.
 */
export function MachineEditor({ id, initial, units, onSave, onCancel }: MachineEditorProps) {
  const [opened] = useState(() =>
    initial === null ? null : { machine: initial, draft: draftFromMachine(initial, units) },
  );
  const read = useCallback((typed: MachineDraft) => withUnshown(readMachine(typed), typed, opened), [opened]);
  const fields = useFields<typeof MACHINE, MachineDraft, MachineJson>({
    key: `machine.${id}`,
    table: MACHINE,
    shape: MACHINE_SHAPE,
    initial: () => opened?.draft ?? blankMachineDraft(units),
    read,
    labelOf: machineLabel,
    onSave,
  });
  return (
    <EditorForm
      title={initial === null ? 'New machine' : `Machine ${initial.name}`}
      form={fields.form}
      draft={fields.draft}
      saveLabel="Save machine"
      onCancel={onCancel}
    >
      <JetFields {...fields} />
      <BoxFields {...fields} />
      <BaselineFields {...fields} />
      <div>
        <BaselineMoreFields {...fields} />
        <IntakeFields {...fields} />
        <LimitsFields {...fields} />
        <CircuitFields {...fields} />
        <AdvancedFields {...fields} />
      </div>
    </EditorForm>
  );
}
