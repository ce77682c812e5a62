import { WholeNames } from '@/components/ui/whole-names';
import { dataAge, hoursProvenance } from '@/lib/hours/provenance';
import type { HourSeries } from '@/lib/hours/series';
import type { Instant } from '@/lib/time/instant';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { ageText, hoursSentence } from '@/lib/words/provenance';
import styles from './data-line.module.css';

type DataLineProps = {
  readonly series: HourSeries;
  readonly demo: boolean;
  readonly readings: readonly { readonly at: Instant }[];
  readonly now: Instant;
  readonly zone: ClockZone;
};

/** What the plan rests on and how old it is. */
export function DataLine({ series, demo, readings, now, zone }: DataLineProps) {
  const told = hoursProvenance(series);
  const age = dataAge(told, now);
  const last = readings.reduce<Instant | null>((a, { at }) => (a === null || at > a ? at : a), null);
  return (
    <p>
      <span className={styles[age === 'part typed' ? 'typed' : age]}>
        {demo ? 'invented' : ageText(told, now)}
      </span>{' '}
      <WholeNames
        text={
          demo ? 'Place, racer and weather of this night.' : hoursSentence(told, now, { zone, from: now })
        }
      />
      {last === null
        ? null
        : ` ${readings.length} reading${readings.length === 1 ? '' : 's'}, the last at ${localClock(last, zone)}.`}
    </p>
  );
}
