import { classNames } from '@/components/ui/class-names';
import { Section } from '@/components/ui/section';
import { type Column, Table } from '@/components/ui/table';
import type { Plan, PlanHour } from '@/lib/plan/types';
import type { UnitChoice } from '@/lib/units/choice';
import {
  formatElevation,
  formatPercent,
  formatPressure,
  formatSignedPercent,
  formatTemperature,
} from '@/lib/units/format';
import { shortCount } from '@/lib/words/counts';
import { densityText } from '@/lib/words/density';
import { crossingsSentence } from '@/lib/words/drift';
import { givenWords, idealText } from '@/lib/words/given-air';
import { STATE_WORD } from '@/lib/words/grades';
import { planClock } from '@/lib/words/runs';
import { jetsText } from '@/lib/words/settings';
import { clockText } from '@/lib/words/times';
import type { Voice } from '@/lib/words/voice';
import styles from './tables.module.css';

type AirTableProps = { readonly plan: Plan; readonly voice: Voice };

/** The hours behind the chart: the same facts in figures. */
export function AirTable({ plan, voice }: AirTableProps) {
  return (
    <Section title="Hours" aside={`${plan.hours.length} hours`}>
      <p>{crossingsSentence(plan, voice)}</p>
      <Table
        caption={`Air hour by hour, the ideal main, and how the baseline ${jetsText(plan.baseline.mains)} would stand.`}
        columns={columnsOf(plan, voice)}
        rows={plan.hours}
        rowKey={({ at }) => String(at)}
      />
    </Section>
  );
}

function columnsOf(plan: Plan, { zone, units }: Voice): readonly Column<PlanHour>[] {
  const clock = planClock(plan, zone);
  return [
    // What is acted on stands first: a hand's width holds the first four columns.
    { head: 'Hour', names: true, cell: ({ at }) => clockText(at, clock) },
    {
      head: 'Risk of lean, as planned',
      figures: true,
      cell: ({ leanCount }) => shortCount(leanCount),
    },
    {
      head: 'Air',
      figures: true,
      cell: (hour) => (
        <>
          {formatTemperature(hour.air.temperature, units)}{' '}
          <Given words={givenWords(hour, units).temperature} />
        </>
      ),
    },
    {
      head: 'Baseline',
      figures: true,
      cell: ({ baselineDrift, baselineState }) => (
        <>
          <span className={styles[baselineState]}>{STATE_WORD[baselineState]}</span>{' '}
          <span className={styles.under}>{formatSignedPercent(baselineDrift, 1)}</span>
        </>
      ),
    },
    { head: 'Ideal', figures: true, cell: ({ ideal }) => idealText(ideal) },
    ...airColumns(units),
    { head: 'Density', figures: true, cell: ({ air }) => densityText(air, units) },
    {
      head: 'Density altitude',
      figures: true,
      cell: ({ air }) => formatElevation(air.densityAltitude, units),
    },
    {
      head: 'From',
      cell: (hour) => (
        <span className={classNames(styles.from, styles[hour.origin])}>{givenWords(hour, units).from}</span>
      ),
    },
  ];
}

/** What density comes from beside the temperature. */
function airColumns(units: UnitChoice): readonly Column<PlanHour>[] {
  return [
    {
      head: 'Station pressure',
      figures: true,
      cell: (hour) => (
        <>
          {formatPressure(hour.air.pressure, units)}
          {hour.air.pressureFrom === 'standard' ? ' (estimate)' : ''}{' '}
          <Given words={givenWords(hour, units).pressure} />
        </>
      ),
    },
    {
      head: 'Humidity',
      figures: true,
      cell: (hour) => (
        <>
          {formatPercent(hour.air.relativeHumidity, 0)} <Given words={givenWords(hour, units).humidity} />
        </>
      ),
    },
  ];
}

/** What stood there before a reading corrected it. */
function Given({ words }: { readonly words: string | null }) {
  return words === null ? null : <span className={styles.under}>{words}</span>;
}
