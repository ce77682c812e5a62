'use client';

import { usePreferences } from '@/components/store/use-preferences';
import { useTable } from '@/components/store/use-table';
import { useWrite } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import type { EventRecord, MachineRecord, Stored } from '@/lib/store/records';
import { rosterNames } from '@/lib/store/roster-names';

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
  const write = useWrite();
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
          options={[...rosterNames(event.value, taking)].map(([value, label]) => ({ value, label }))}
          onChange={(machineId) => void changePreferences({ machineId })}
        />
      )}
      {events.length < 2 ? null : (
        <Button
          kind="quiet"
          onClick={() => void write.remove('events', event, `${event.value.event.name} removed.`)}
        >
          Remove this night
        </Button>
      )}
    </Columns>
  );
}
