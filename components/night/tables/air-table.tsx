import { Section } from '@/components/ui/section';
import { type Column, Table } from '@/components/ui/table';
import type { Plan, PlanHour } from '@/lib/plan/types';
import {
  formatDensity,
  formatElevation,
  formatPercent,
  formatPressure,
  formatSignedPercent,
  formatTemperature,
} from '@/lib/units/format';
import { planClock } from '@/lib/words/runs';
import { jetsText } from '@/lib/words/settings';
import { clockText } from '@/lib/words/times';
import type { Voice } from '@/lib/words/voice';
import { idealText } from './ideal-text';
import styles from './tables.module.css';

type AirTableProps = { readonly plan: Plan; readonly voice: Voice };

const ORIGIN: Readonly<Record<PlanHour['origin'], string>> = {
  forecast: 'forecast',
  typed: 'typed',
  between: 'between',
  filled: 'filled',
};

/** The hours behind the chart: the same facts in figures. */
export function AirTable({ plan, voice }: AirTableProps) {
  return (
    <Section title="Hours" aside={`${plan.hours.length} hours`}>
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
    { head: 'Hour', names: true, cell: ({ at }) => clockText(at, clock) },
    { head: 'Air', figures: true, cell: ({ air }) => formatTemperature(air.temperature, units) },
    { head: 'Ideal', figures: true, cell: ({ ideal }) => idealText(ideal) },
    {
      head: 'Baseline',
      figures: true,
      cell: ({ baselineDrift, baselineState }) => (
        <>
          <span className={styles[baselineState]}>{baselineState}</span>{' '}
          {formatSignedPercent(baselineDrift, 1)}
        </>
      ),
    },
    {
      head: 'Planned jets lean',
      figures: true,
      cell: ({ chanceOfLean }) => formatPercent(chanceOfLean, 0),
    },
    {
      head: 'Station pressure',
      figures: true,
      cell: ({ air }) =>
        `${formatPressure(air.pressure, units)}${air.pressureFrom === 'standard' ? ' (estimate)' : ''}`,
    },
    {
      head: 'Humidity',
      figures: true,
      cell: ({ air }) => formatPercent(air.relativeHumidity, 0),
    },
    { head: 'Density', figures: true, cell: ({ air }) => formatDensity(air.density) },
    {
      head: 'Density altitude',
      figures: true,
      cell: ({ air }) => formatElevation(air.densityAltitude, units),
    },
    { head: 'From', cell: ({ origin }) => <span className={styles[origin]}>{ORIGIN[origin]}</span> },
  ];
}
