import { DataLine } from '@/components/night/plate/data-line';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { dayText } from '@/lib/words/day-text';
import { together } from '@/lib/words/together';
import styles from './club-page.module.css';
import type { ClubViewProps } from './view-props';

/** Which event, and what its briefing rests on. */
export function ClubHead({ records, club, now }: Pick<ClubViewProps, 'records' | 'club' | 'now'>) {
  const { event, demo } = records.event.value;
  const first = event.runs[0];
  return (
    <>
      <h1>Club</h1>
      <p className={styles.event} data-sheet-title>
        {together(
          [event.name, first === undefined ? null : dayText(instantFromJson(first.start), event.timezone)]
            .filter((part) => part !== null)
            .join(', '),
        )}
      </p>
      {club.night === null ? null : (
        <DataLine
          series={club.night.series}
          demo={demo}
          readings={club.night.readings}
          now={now}
          zone={event.timezone}
        />
      )}
    </>
  );
}
