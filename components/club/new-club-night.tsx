'use client';

import { LazyEventEditor } from '@/components/night/setup/edit-dialogs';
import { usePreferences } from '@/components/store/use-preferences';
import { useWrite } from '@/components/store/use-write';
import { Dialog } from '@/components/ui/dialog';
import { turnBack } from '@/components/ui/use-hash';
import { newEventRecord } from '@/lib/night/edited-records';
import { newId } from '@/lib/store/new-id';
import type { UnitChoice } from '@/lib/units/choice';

const close = () => turnBack('new', 'briefing');

/** A night for the whole club: where and when; hours and racers come next. */
export function NewClubNight({ units }: { readonly units: UnitChoice }) {
  const write = useWrite();
  const { changePreferences } = usePreferences();
  return (
    <Dialog title="Club night, step 1 of 3: event" open onClose={close}>
      <LazyEventEditor
        id="new-club"
        initial={null}
        units={units}
        onSave={async (typed) => {
          const id = newId();
          // Nobody is on the roster yet; racers join once there is an event to join.
          const record = newEventRecord(typed, { machineId: '', forecastId: newId() });
          const refusal = await write.add('events', { ...record, machineIds: [] }, null, id);
          if (refusal !== undefined) return refusal;
          await changePreferences({ eventId: id });
          // With a place the forecast comes by itself.
          turnBack('new', typed.event.place === undefined ? 'hours' : 'racers');
          return undefined;
        }}
        onCancel={close}
      />
    </Dialog>
  );
}
