'use client';

import { useCallback, useState } from 'react';
import { EditorForm } from '@/components/draft/editor-form';
import { useDraft } from '@/components/draft/use-draft';
import { type Save, useForm } from '@/components/draft/use-form';
import type { MachineJson } from '@/lib/contract/machine';
import type { UnitChoice } from '@/lib/units/choice';
import { AdvancedFields } from './advanced-fields';
import { BaselineFields, BaselineMoreFields } from './baseline-fields';
import { BoxFields } from './box-fields';
import { CircuitFields } from './circuit-fields';
import { blankMachineDraft, draftFromMachine } from './draft-from-machine';
import { IntakeFields } from './intake-fields';
import { JetFields } from './jet-fields';
import { LimitsFields } from './limits-fields';
import type { MachineDraft } from './machine-draft';
import { machineLabel } from './machine-labels';
import { MACHINE_SHAPE } from './machine-shape';
import { readMachine } from './read-machine';
import { withUnshown } from './with-unshown';

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
  const [start] = useState(() => opened?.draft ?? blankMachineDraft(units));
  const draft = useDraft({ key: `machine.${id}`, initial: start, shape: MACHINE_SHAPE });
  const read = useCallback((typed: MachineDraft) => withUnshown(readMachine(typed), typed, opened), [opened]);
  const form = useForm({ draft, read, labelOf: machineLabel, onSave });
  return (
    <EditorForm
      title={initial === null ? 'New machine' : `Machine ${initial.name}`}
      form={form}
      draft={draft}
      saveLabel="Save machine"
      onCancel={onCancel}
    >
      <JetFields draft={draft} form={form} />
      <BoxFields draft={draft} form={form} />
      <BaselineFields draft={draft} form={form} />
      <div>
        <BaselineMoreFields draft={draft} form={form} />
        <IntakeFields draft={draft} form={form} />
        <LimitsFields draft={draft} form={form} />
        <CircuitFields draft={draft} form={form} />
        <AdvancedFields draft={draft} form={form} />
      </div>
    </EditorForm>
  );
}
