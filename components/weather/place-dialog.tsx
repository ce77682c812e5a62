'use client';

import dynamic from 'next/dynamic';
import { withoutOffsetElsewhere } from '@/components/event/moved-place';
import { useSave } from '@/components/night/setup/use-save';
import { newId } from '@/components/store/new-id';
import { Dialog } from '@/components/ui/dialog';
import type { TypedPlace } from '@/lib/fields/place/place-rows';
import { typedHoursAt } from '@/lib/store/pressure-answers';
import type { EventRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';

const PlaceForm = dynamic(() => import('./place-form').then((module) => module.PlaceForm), {
  ssr: false,
  loading: () => <p>Opening the form...</p>,
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

/** The event at its place and following the forecast there; `freshId` names the forecast where it has none yet. */
export function withForecastAt(
  record: EventRecord,
  { place, elevationM }: TypedPlace,
  freshId: string,
): EventRecord {
  return {
    ...withoutOffsetElsewhere(record, place),
    event: { ...record.event, place, elevationM },
    typed: typedHoursAt(record, elevationM),
    forecastId: record.forecastId ?? freshId,
    demo: false,
  };
}
