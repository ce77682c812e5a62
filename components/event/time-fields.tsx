'use client';

import { useClockZone } from '@/components/store/use-clock-zone';
import { useNow } from '@/components/store/use-now';
import { Button } from '@/components/ui/button';
import { Stack } from '@/components/ui/stack';
import { trackTimeSentence } from '@/lib/words/track-time';
import type { EventFields } from './event-fields';
import { ZoneField } from './zone-field';
import { deviceZone } from './zones';

/** The zone all clock times of the event are told in, and its date. */
export function TimeFields({ draft, form, field }: EventFields) {
  const { timezone } = draft.value;
  const setZone = (step: string | null, zone: string) =>
    draft.change(step, (before) => ({ ...before, timezone: zone }));
  const now = useNow();
  const clock = useClockZone(timezone);
  const device = deviceZone();
  const trackTime = now === null ? null : trackTimeSentence(clock, device, now);
  return (
    <Stack>
      <ZoneField
        {...form.field('timezone')}
        hint={trackTime ?? 'Type a big city of the zone, such as Chicago or Oslo.'}
        value={timezone}
        onChange={(text) => setZone('timezone', text)}
      />
      {timezone === device ? null : (
        <Button onClick={() => setZone(null, device)}>Use this device’s: {device}</Button>
      )}
      {field('date')}
    </Stack>
  );
}
