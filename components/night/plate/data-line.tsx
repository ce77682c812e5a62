import type { HourSeries } from '@/lib/hours/series';
import type { Instant } from '@/lib/time/instant';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { countdown } from '@/lib/words/countdown';
import { type DataAge, dataAge } from './data-age';
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
  const age = dataAge(series, now);
  const last = readings.reduce<Instant | null>((a, { at }) => (a === null || at > a ? at : a), null);
  return (
    <p>
      <span className={styles[age]}>{demo ? 'invented' : age}</span> {sourceText(series, age, demo, now)}
      {last === null
        ? null
        : ` ${readings.length} reading${readings.length === 1 ? '' : 's'}, the last at ${localClock(last, zone)}.`}
    </p>
  );
}

function sourceText({ source }: HourSeries, age: DataAge, demo: boolean, now: Instant): string {
  if (demo) return 'Place, racer and weather of this night.';
  if (age === 'typed') return 'Hours entered by hand; no forecast behind them.';
  const at = source.issuedAt ?? source.fetchedAt;
  return at === null ? `Hours from ${source.name}.` : `Hours from ${source.name}, ${countdown(now, at)}.`;
}
