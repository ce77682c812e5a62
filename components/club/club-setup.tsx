'use client';

import { eventSummary } from '@/components/night/setup/setup-summary';
import { Section } from '@/components/ui/section';
import type { UnitChoice } from '@/lib/units/choice';
import type { ClubRecords } from './club';
import styles from './club-page.module.css';

type ClubSetupProps = { readonly records: ClubRecords; readonly units: UnitChoice };

/** Where and when; a night of its own for the club. */
export function ClubSetup({ records, units }: ClubSetupProps) {
  return (
    <Section title="Event" id="set-up">
      <div className={styles.row}>
        <p>{eventSummary(records.event.value, units)}</p>
        <a className={styles.way} href="#event" aria-label="Change: Event">
          Change
        </a>
      </div>
      <a className={styles.start} href="#new">
        Start a club night
      </a>
    </Section>
  );
}
