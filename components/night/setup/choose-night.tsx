'use client';

import { useOpenedStore } from '@/components/store/store-provider';
import { usePreferences } from '@/components/store/use-preferences';
import { useTable } from '@/components/store/use-table';
import { Button } from '@/components/ui/button';
import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import { useToast } from '@/components/ui/toast';
import type { EventRecord, MachineRecord, Stored } from '@/lib/store/records';

type ChooseNightProps = {
  readonly event: Stored<EventRecord> | null;
  readonly machine: Stored<MachineRecord> | null;
};

/** Where there is more than one night or machine: which is shown. */
export function ChooseNight({ event, machine }: ChooseNightProps) {
  const { changePreferences } = usePreferences();
  const events = useTable('events') ?? [];
  const machines = useTable('machines') ?? [];
  const taking = machines.filter(({ id }) => event?.value.machineIds.includes(id));
  const remove = useRemoveNight();
  if (event === null || (events.length < 2 && taking.length < 2)) return null;
  return (
    <Columns>
      {events.length < 2 ? null : (
        <Select
          label="Night shown"
          value={event.id}
          options={events.map(({ id, value }) => ({
            value: id,
            label: value.demo ? `${value.event.name} (invented)` : value.event.name,
          }))}
          onChange={(eventId) => void changePreferences({ eventId })}
        />
      )}
      {taking.length < 2 || machine === null ? null : (
        <Select
          label="Machine shown"
          value={machine.id}
          options={taking.map(({ id, value }) => ({ value: id, label: value.machine.name }))}
          onChange={(machineId) => void changePreferences({ machineId })}
        />
      )}
      {events.length < 2 ? null : (
        <Button kind="quiet" onClick={() => void remove(event)}>
          Remove this night
        </Button>
      )}
    </Columns>
  );
}

/** Removes at once and says so with a way back. */
function useRemoveNight() {
  const store = useOpenedStore()?.store;
  const say = useToast();
  return async (event: Stored<EventRecord>) => {
    if (store === undefined) return;
    const removed = await store.remove('events', event.id, event.revision);
    if (!removed.ok) {
      say({ text: 'Not removed: this night was changed meanwhile. Look again and repeat it.' });
      return;
    }
    say({
      text: `${event.value.event.name} removed.`,
      act: { label: 'Undo', do: () => void store.restore('events', removed.value) },
    });
  };
}
