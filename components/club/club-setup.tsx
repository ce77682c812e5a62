'use client';

import { useClockZone } from '@/components/store/use-clock-zone';
import { Section } from '@/components/ui/section';
import { Way } from '@/components/ui/way';
import type { ClubRecords } from '@/lib/night/club';
import type { UnitChoice } from '@/lib/units/choice';
import { eventSummary } from '@/lib/words/setup-summary';
import styles from './club-page.module.css';

type ClubSetupProps = { readonly records: ClubRecords; readonly units: UnitChoice };

/** Where and when; a night of its own for the club. */
export function ClubSetup({ records, units }: ClubSetupProps) {
  const clock = useClockZone(records.event.value.event.timezone);
  return (
    <Section title="Event" id="set-up">
      <div className={styles.row}>
        <p>{eventSummary(records.event.value, units, clock)}</p>
        <Way href="#event" aria-label="Change: Event">
          Change
        </Way>
      </div>
      <Way kind="firm" href="#new">
        Start a club night
      </Way>
    </Section>
  );
}
