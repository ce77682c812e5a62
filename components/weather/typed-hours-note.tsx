'use client';

import { useClockZone } from '@/components/store/use-clock-zone';
import { useWrite } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { EventRecord, Stored } from '@/lib/store/records';
import { windowText } from '@/lib/words/times';
import styles from './weather.module.css';

type TypedHoursNoteProps = { readonly event: Stored<EventRecord>; readonly hasForecast: boolean };

/** Says where typed hours stand before the forecast, and how to go by the forecast alone. */
export function TypedHoursNote({ event, hasForecast }: TypedHoursNoteProps) {
  const write = useWrite();
  const zone = useClockZone(event.value.event.timezone);
  const typed = event.value.typed?.hours ?? [];
  const times = typed.map(({ time }) => instantFromJson(time)).sort((a, b) => a - b);
  const [first, last] = [times[0], times.at(-1)];
  if (first === undefined || last === undefined || !hasForecast) return null;
  const window = windowText(first, last, { zone, from: first });
  return (
    <div className={styles.facts}>
      <p>
        The hours you typed, {window}, stand before the forecast; the hours table marks each as typed or
        forecast. Where you typed no pressure, the forecast’s counts.
      </p>
      <div className={styles.acts}>
        <Button
          onClick={() =>
            void write.change(
              { table: 'events', id: event.id },
              (record) => ({ ...record, typed: null }),
              'Typed hours taken away; the forecast stands alone.',
            )
          }
        >
          Go by the forecast alone
        </Button>
      </div>
    </div>
  );
}
