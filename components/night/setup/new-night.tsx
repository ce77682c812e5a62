'use client';

import { useState } from 'react';
import { usePreferences } from '@/components/store/use-preferences';
import { useTable } from '@/components/store/use-table';
import { useWrite } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Stack } from '@/components/ui/stack';
import { newEventRecord } from '@/lib/night/edited-records';
import { DEMO_MACHINE_ID } from '@/lib/night/living-demo';
import { newId } from '@/lib/store/new-id';
import type { UnitChoice } from '@/lib/units/choice';
import { LazyEventEditor, LazyMachineEditor } from './edit-dialogs';

type NewNightProps = {
  readonly units: UnitChoice;
  readonly onClose: () => void;
  /** The night is there; its hours come next, by themselves where it has a place to ask a forecast for. */
  readonly onMade: (hasPlace: boolean) => void;
};

/** A night of one's own: the machine first, then where and when; the hours follow in their own form. */
export function NewNight({ units, onClose, onMade }: NewNightProps) {
  const { changePreferences } = usePreferences();
  const write = useWrite();
  const [machineId, setMachineId] = useState<string | null>(null);
  if (machineId === null)
    return (
      <Dialog title="Your night, step 1 of 3: machine" open onClose={onClose}>
        <WhichMachine units={units} onChosen={setMachineId} onCancel={onClose} />
      </Dialog>
    );
  return (
    <Dialog title="Your night, step 2 of 3: event" open onClose={onClose}>
      <LazyEventEditor
        id="new"
        initial={null}
        units={units}
        onSave={async (typed) => {
          const id = newId();
          const record = newEventRecord(typed, { machineId, forecastId: newId() });
          const refusal = await write.add('events', record, null, id);
          if (refusal !== undefined) return refusal;
          await changePreferences({ eventId: id, machineId });
          onMade(typed.event.place !== undefined);
        }}
        onCancel={onClose}
      />
    </Dialog>
  );
}

type WhichMachineProps = {
  readonly units: UnitChoice;
  readonly onChosen: (id: string) => void;
  readonly onCancel: () => void;
};

/** A machine that is known already, or a new one. */
function WhichMachine({ units, onChosen, onCancel }: WhichMachineProps) {
  const machines = useTable('machines')?.filter(({ id }) => id !== DEMO_MACHINE_ID) ?? [];
  const [adding, setAdding] = useState(false);
  const write = useWrite();
  if (machines.length > 0 && !adding)
    return (
      <Stack>
        {machines.map(({ id, value }) => (
          <Button key={id} size="large" wide onClick={() => onChosen(id)}>
            {value.machine.name}
          </Button>
        ))}
        <Button size="large" wide onClick={() => setAdding(true)}>
          Another machine
        </Button>
      </Stack>
    );
  return (
    <LazyMachineEditor
      id="new"
      initial={null}
      units={units}
      onSave={async (machine) => {
        const id = newId();
        // Loaded with the form, since it brings the schemas along.
        const { newMachineRecord } = await import('@/lib/store/new-machine-record');
        const refusal = await write.add('machines', newMachineRecord(machine), null, id);
        if (refusal === undefined) onChosen(id);
        return refusal;
      }}
      onCancel={onCancel}
    />
  );
}
