import { classNames } from '@/components/ui/class-names';
import { type Column, Table } from '@/components/ui/table';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import type { Machine } from '@/lib/carb/machine';
import { stateOf } from '@/lib/plan/state-of';
import type { SeasonSetup } from '@/lib/trail/season';
import type { UnitChoice } from '@/lib/units/choice';
import { formatElevation, formatNumber, formatPercent, formatTemperature } from '@/lib/units/format';
import { driftText } from '@/lib/words/grades';
import { turnsText } from '@/lib/words/screw';
import { seasonMainText } from '@/lib/words/season';
import styles from './trail.module.css';

type SeasonTableProps = {
  readonly setups: readonly SeasonSetup[];
  readonly machine: Machine;
  readonly units: UnitChoice;
};

type Fact = {
  readonly name: string;
  readonly value: (setup: SeasonSetup) => string;
  /** A setting: highlighted where it differs. What it follows from always does. */
  readonly set: boolean;
};

/** Settings under each other, days beside each other; what differs from the first day is marked. */
export function SeasonTable({ setups, machine, units }: SeasonTableProps) {
  const [first] = setups;
  if (first === undefined) return null;
  const facts = factsOf(machine, units);
  const columns: readonly Column<Fact>[] = [
    { head: <VisuallyHidden>Setting</VisuallyHidden>, names: true, cell: ({ name }) => name },
    ...setups.map(
      (setup): Column<Fact> => ({
        head: (
          <>
            {setup.condition.name}
            <span className={styles.under}>{formatTemperature(setup.condition.air.temperature, units)}</span>
          </>
        ),
        cell: (fact) => {
          const differs = fact.set && fact.value(setup) !== fact.value(first);
          return (
            <span className={classNames(styles.fact, fact.set && styles.setting, differs && styles.differs)}>
              {fact.value(setup)}
              {differs ? <VisuallyHidden> (differs)</VisuallyHidden> : null}
            </span>
          );
        },
      }),
    ),
  ];
  return (
    <Table
      caption="Settings by kind of day"
      captionHidden
      columns={columns}
      rows={facts}
      rowKey={({ name }) => name}
    />
  );
}

function factsOf(machine: Machine, units: UnitChoice): readonly Fact[] {
  const { pilot, needle, trim } = machine;
  const circuits: Fact[] = [];
  if (pilot !== null)
    circuits.push(
      {
        name: pilot.screw === 'fuel' ? 'Fuel screw' : 'Air screw',
        set: true,
        value: (setup) => screwText(setup, machine),
      },
      { name: 'Pilot', set: true, value: ({ pilot: advice }) => String(advice?.jet ?? '') },
    );
  if (needle !== null)
    circuits.push({
      name: 'Clip groove',
      set: true,
      value: ({ needle: advice }) => grooveText(advice),
    });
  circuits.push({ name: 'Main', set: true, value: (setup) => seasonMainText(setup, machine.limits) });
  if (trim !== null)
    circuits.push({ name: 'Trim', set: true, value: ({ setting }) => String(setting.trim ?? '') });
  return [
    ...circuits,
    {
      name: 'Mixture',
      set: false,
      value: ({ leanest }) => driftText(leanest, stateOf(leanest, machine.limits)),
    },
    { name: 'Power', set: false, value: ({ relativePower }) => formatPercent(relativePower, 1) },
    densityFact(units),
  ];
}

/** How thick the air is, as whoever reads these units counts it. */
function densityFact(units: UnitChoice): Fact {
  if (units.temperature === 'C')
    return {
      name: 'Density, kg/m³',
      set: false,
      value: ({ condition }) => formatNumber(condition.air.density, 3),
    };
  return {
    name: 'Density altitude',
    set: false,
    value: ({ condition }) => formatElevation(condition.air.densityAltitude, units),
  };
}

function screwText({ pilot: advice }: SeasonSetup, { pilot }: Machine): string {
  if (advice === null || pilot === null) return '';
  const turns = turnsText(advice.turns, pilot);
  return advice.act === 'none-left' ? `${turns}, at its end` : turns;
}

function grooveText(advice: SeasonSetup['needle']): string {
  if (advice === null) return '';
  return advice.beyondNeedle ? `${advice.groove}, at its end` : String(advice.groove);
}
