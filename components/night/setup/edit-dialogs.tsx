'use client';

import dynamic from 'next/dynamic';
import { useSave } from '@/components/store/use-save';
import { Dialog } from '@/components/ui/dialog';
import { withEditedEvent, withEditedHours } from '@/lib/night/edited-records';
import type { EventRecord, MachineRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';

const loading = () => <p>Opening the form…</p>;
/** Forms come when they are asked for: the plan must be readable before them. */
export const LazyEventEditor = dynamic(
  () => import('@/components/event/event-editor').then((module) => module.EventEditor),
  { ssr: false, loading },
);
export const LazyHoursEditor = dynamic(
  () => import('@/components/hours/hours-editor').then((module) => module.HoursEditor),
  { ssr: false, loading },
);
export const LazyMachineEditor = dynamic(
  () => import('@/components/machine/machine-editor').then((module) => module.MachineEditor),
  { ssr: false, loading },
);

const EditedMachine = dynamic(
  () => import('@/components/machine/edited-machine').then((module) => module.EditedMachine),
  { ssr: false, loading },
);

type EditProps<R> = {
  readonly stored: Stored<R>;
  readonly units: UnitChoice;
  readonly onClose: () => void;
};

/** Closes the form where it was saved; else the form shows why not. */
async function closing(saved: Promise<string | undefined>, onClose: () => void) {
  const refusal = await saved;
  if (refusal === undefined) onClose();
  return refusal;
}

export function EditEvent({ stored, units, onClose }: EditProps<EventRecord>) {
  const save = useSave('events', stored);
  return (
    <Dialog title="Event" open onClose={onClose}>
      <LazyEventEditor
        id={stored.id}
        initial={stored.value.event}
        units={units}
        onSave={(typed) =>
          closing(
            save((record) => withEditedEvent(record, typed)),
            onClose,
          )
        }
        onCancel={onClose}
      />
    </Dialog>
  );
}

export function EditHours({ stored, units, onClose }: EditProps<EventRecord>) {
  const save = useSave('events', stored);
  return (
    <Dialog title="Hours" open onClose={onClose}>
      <LazyHoursEditor
        id={stored.id}
        initial={stored.value.typed}
        event={stored.value.event}
        units={units}
        onSave={(reading) =>
          closing(
            save((record) => withEditedHours(record, reading)),
            onClose,
          )
        }
        onCancel={onClose}
      />
    </Dialog>
  );
}

export function EditMachine({ stored, units, onClose }: EditProps<MachineRecord>) {
  return (
    <Dialog title="Machine" open onClose={onClose}>
      <EditedMachine machine={stored} units={units} onClose={onClose} />
    </Dialog>
  );
}
