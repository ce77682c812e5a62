import { Notice } from '@/components/ui/notice';
import { Stack } from '@/components/ui/stack';
import { Way } from '@/components/ui/way';
import { calendarAddress, MOST_FEED_CHARACTERS, tableAddress, webcalAddress } from '@/lib/share/addresses';
import type { SharedNight } from '@/lib/share/shared-night';
import type { UnitChoice } from '@/lib/units/choice';
import { CopyField } from './copy-field';
import styles from './share.module.css';

type FeedProps = {
  readonly night: SharedNight;
  readonly payload: string;
  readonly origin: string;
  readonly units: UnitChoice;
};

/** Addresses that answer with a new plan each time they are asked. */
export function FeedAddresses({ night, payload, origin, units }: FeedProps) {
  if (payload.length > MOST_FEED_CHARACTERS)
    return <p>This night is too long for an address. Share fewer machines at once.</p>;
  const calendar = calendarAddress(origin, payload, units);
  return (
    <Stack>
      <p className={styles.words}>
        Subscribe once, and the calendar plans the night again with the newest forecast every time it looks:
        each swap with its alarms, and what moved against the plan you share now. How often it looks is up to
        the calendar: some ask every quarter of an hour, some once a day.
      </p>
      <WithoutForecast night={night} />
      <Way kind="firm" href={webcalAddress(calendar)}>
        Subscribe on this device
      </Way>
      <CopyField
        label="Calendar address"
        hint="For a calendar that asks for an address: subscribe from URL."
        text={calendar}
      />
      <CopyField
        label="Table address"
        hint="For a spreadsheet: put it into cell A1 and write =IMPORTDATA(A1) into A2."
        text={tableAddress(origin, payload, units)}
      />
      <p className={styles.words}>
        The address holds the night: whoever has it can read it. The calendar hears nothing back, so once you
        do something else than planned, share again.
      </p>
    </Stack>
  );
}

/** Said where there is no forecast that could be followed. */
function WithoutForecast({ night }: { readonly night: SharedNight }) {
  if (night.hoursTyped === true)
    return (
      <Notice>
        <p>
          The hours of this night were typed. The calendar goes by them and puts no forecast in their place.
        </p>
      </Notice>
    );
  if (night.event.place !== undefined) return null;
  return (
    <Notice>
      <p>
        This night names no place, so there is no forecast to follow. Give the event a place, then share
        again.
      </p>
    </Notice>
  );
}
