'use client';

import dynamic from 'next/dynamic';
import { useSave } from '@/components/store/use-save';
import { Dialog } from '@/components/ui/dialog';
import { withForecastAt } from '@/lib/night/edited-records';
import { newId } from '@/lib/store/new-id';
import type { EventRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';

const PlaceForm = dynamic(() => import('./place-form').then((module) => module.PlaceForm), {
  ssr: false,
  loading: () => <p>Opening the form…</p>,
});

type PlaceDialogProps = {
  readonly stored: Stored<EventRecord>;
  readonly units: UnitChoice;
  readonly onClose: () => void;
};

/** The form in front of the page; saving it makes the night follow the forecast of that place. */
export function PlaceDialog({ stored, units, onClose }: PlaceDialogProps) {
  const save = useSave('events', stored);
  return (
    <Dialog title="Forecast" open onClose={onClose}>
      <PlaceForm
        id={stored.id}
        event={stored.value.event}
        units={units}
        onSave={async (typed) => {
          const refusal = await save((record) => withForecastAt(record, typed, newId()));
          if (refusal === undefined) onClose();
          return refusal;
        }}
        onCancel={onClose}
      />
    </Dialog>
  );
}
