'use client';

import { usePreferences } from '@/components/store/use-preferences';
import { useTable } from '@/components/store/use-table';
import { Select } from '@/components/ui/select';
import type { EventRecord, Stored } from '@/lib/store/records';

/** Where there is more than one event: which is shown. */
export function ChooseEvent({ event }: { readonly event: Stored<EventRecord> }) {
  const { changePreferences } = usePreferences();
  const events = useTable('events') ?? [];
  if (events.length < 2) return null;
  return (
    <Select
      label="Event"
      value={event.id}
      options={events.map(({ id, value }) => ({
        value: id,
        label: value.demo ? `${value.event.name} (invented)` : value.event.name,
      }))}
      onChange={(eventId) => void changePreferences({ eventId })}
    />
  );
}
