'use client';

import { eventSummary, hoursSummary } from '@/components/night/setup/setup-summary';
import { Section } from '@/components/ui/section';
import type { UnitChoice } from '@/lib/units/choice';
import type { ClubRecords } from './club';
import styles from './club-page.module.css';

type ClubSetupProps = { readonly records: ClubRecords; readonly units: UnitChoice };

/** Where, when, and the one forecast for everybody. */
export function ClubSetup({ records, units }: ClubSetupProps) {
  const { value } = records.event;
  return (
    <Section title="Event and hours" id="set-up">
      <div className={styles.setup}>
        <Row title="Event" text={eventSummary(value, units)} view="event" />
        <Row title="Hours" text={hoursSummary(value, units)} view="hours" />
      </div>
      <a className={styles.start} href="#new">
        Start a club night
      </a>
    </Section>
  );
}

function Row({
  title,
  text,
  view,
}: {
  readonly title: string;
  readonly text: string;
  readonly view: string;
}) {
  return (
    <div className={styles.row}>
      <p>
        <span className={styles.part}>{title}. </span>
        {text}
      </p>
      <a className={styles.way} href={`#${view}`} aria-label={`Change: ${title}`}>
        Change
      </a>
    </div>
  );
}
