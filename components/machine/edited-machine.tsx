'use client';

import { useState } from 'react';
import { FormGone } from '@/components/store/form-gone';
import { useSave } from '@/components/store/use-save';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import { recordWithMachine } from '@/lib/store/record-with-machine';
import type { MachineRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { MachineEditor } from './machine-editor';

type EditedMachineProps = {
  readonly machine: Stored<MachineRecord>;
  readonly units: UnitChoice;
  readonly onClose: () => void;
};

/** The form of a stored machine. What it is based on is what stood when it was opened, whatever other tabs do. */
export function EditedMachine({ machine, units, onClose }: EditedMachineProps) {
  const [seen] = useState(machine);
  const save = useSave('machines', seen);
  return (
    <>
      <FormGone table="machines" id={seen.id} />
      <MachineEditor
        id={seen.id}
        initial={machineWithBaseline(seen.value)}
        units={units}
        onSave={async (edited) => {
          const refused = await save(
            (record) => recordWithMachine(record, edited),
            `${edited.name} is saved.`,
          );
          if (refused === undefined) onClose();
          return refused;
        }}
        onCancel={onClose}
      />
    </>
  );
}
