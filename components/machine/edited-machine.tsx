'use client';

import { useState } from 'react';
import type { SaveOutcome } from '@/components/draft/use-form';
import { useOpenedStore } from '@/components/store/store-provider';
import { useToast } from '@/components/ui/toast';
import type { MachineJson } from '@/lib/contract/machine';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import type { MachineRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { MachineEditor } from './machine-editor';
import { saveMachine } from './save-machine';

type EditedMachineProps = {
  readonly machine: Stored<MachineRecord>;
  readonly units: UnitChoice;
  readonly onClose: () => void;
};

/** The form of a stored machine. What it is based on is what stood when it was opened, whatever other tabs do. */
export function EditedMachine({ machine, units, onClose }: EditedMachineProps) {
  const opened = useOpenedStore();
  const say = useToast();
  const [basedOn, setBasedOn] = useState(machine);
  async function save(edited: MachineJson): Promise<SaveOutcome> {
    if (opened === null) return 'The store is not open yet. Try again in a moment.';
    const saved = await saveMachine(opened.store, basedOn, edited);
    if (!saved.ok) {
      setBasedOn(saved.basedOn);
      return saved.outcome;
    }
    const { before, after } = saved;
    const undo = () => void opened.store.put('machines', after.id, before.value, after.revision);
    say({ text: `${edited.name} is saved.`, act: { label: 'Undo', do: undo } });
    onClose();
    return undefined;
  }
  return (
    <MachineEditor
      id={machine.id}
      initial={machineWithBaseline(basedOn.value)}
      units={units}
      onSave={save}
      onCancel={onClose}
    />
  );
}
