'use client';

import { wholeOf } from '@/components/draft/part';
import { useClockZone } from '@/components/store/use-clock-zone';
import { useNow } from '@/components/store/use-now';
import { Button } from '@/components/ui/button';
import { Stack } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import { trackTimeSentence } from '@/lib/words/track-time';
import type { EventSectionProps } from './section-props';
import { ZoneField } from './zone-field';
import { deviceZone } from './zones';

/** The zone all clock times of the event are told in, and its date. */
export function TimeFields({ draft, form }: EventSectionProps) {
  const whole = wholeOf(draft);
  const { timezone, date } = draft.value;
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
        onChange={(text) => whole.set('timezone', text)}
      />
      {timezone === device ? null : (
        <Button onClick={() => whole.setAll({ timezone: device })}>Use this device’s: {device}</Button>
      )}
      <TextField
        {...form.field('date')}
        type="date"
        value={date}
        onChange={(text) => whole.set('date', text)}
      />
    </Stack>
  );
}
