'use client';

import { useMemo, useState } from 'react';
import { wholeOf } from '@/components/draft/part';
import { useNow } from '@/components/night/use-now';
import { useClockZone } from '@/components/store/use-clock-zone';
import { Button } from '@/components/ui/button';
import { Combobox } from '@/components/ui/combobox';
import { Stack } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { SectionProps } from './section-props';
import { deviceZone, knownZones, matchingZones, trackTimeSentence } from './zones';

/** The zone all clock times of the event are told in, and its date. */
export function TimeFields({ draft, form }: SectionProps) {
  const whole = wholeOf(draft);
  const { timezone, date } = draft.value;
  const now = useNow();
  const clock = useClockZone(timezone);
  const [zones] = useState(knownZones);
  const device = deviceZone();
  const matching = useMemo(() => matchingZones(timezone, zones), [timezone, zones]);
  const trackTime = now === null ? null : trackTimeSentence(clock, device, now);
  return (
    <Stack>
      <Combobox
        {...form.field('timezone')}
        hint={trackTime ?? 'Type a big city of the zone, such as Chicago or Oslo.'}
        value={timezone}
        options={zones.includes(timezone) ? zones : matching}
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
