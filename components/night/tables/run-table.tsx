import { classNames } from '@/components/ui/class-names';
import { Section } from '@/components/ui/section';
import { type Column, Table } from '@/components/ui/table';
import type { Machine } from '@/lib/carb/machine';
import type { DriftState, Plan, RunPlan } from '@/lib/plan/types';
import { formatPercent, formatSignedPercent } from '@/lib/units/format';
import { runTemperatureText } from '@/lib/words/given-air';
import { planClock, runName } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';
import { windowText } from '@/lib/words/times';
import type { Voice } from '@/lib/words/voice';
import { idealText } from './ideal-text';
import styles from './tables.module.css';

type RunTableProps = { readonly plan: Plan; readonly machine: Machine; readonly voice: Voice };

const STATE: Readonly<Record<RunPlan['state'], string>> = {
  made: 'made',
  planned: 'planned',
  'beyond-hours': 'no hours',
};

/** Every run with its jets and how it stands. */
export function RunTable({ plan, machine, voice }: RunTableProps) {
  const fits = new Set(plan.swaps.map(({ beforeRun }) => beforeRun));
  return (
    <Section title="Runs">
      <Table
        caption="Jets for every run. A line above a run: something is fitted before it."
        columns={columnsOf(plan, machine, voice)}
        rows={plan.runs}
        rowKey={({ run }) => String(run)}
        rowClass={({ run, state }) =>
          classNames(fits.has(run) && styles.fits, state === 'made' && styles.made)
        }
      />
    </Section>
  );
}

function columnsOf(plan: Plan, machine: Machine, { zone, units }: Voice): readonly Column<RunPlan>[] {
  const clock = planClock(plan, zone);
  const swapBefore = (run: number) => plan.swaps.find(({ beforeRun }) => beforeRun === run);
  return [
    {
      head: 'Run',
      names: true,
      cell: ({ run, air, givenTemperature }) => {
        const times = plan.sortedRuns[run];
        return (
          <>
            {runName(plan, run)}{' '}
            <span className={styles.under}>
              {times === undefined ? null : windowText(times.start, times.end, clock)}
            </span>{' '}
            <span className={styles.under}>{runTemperatureText({ air, givenTemperature }, units)}</span>
          </>
        );
      },
    },
    {
      head: 'Jets',
      cell: ({ run, setting }) => {
        const swap = swapBefore(run);
        return (
          <>
            <strong>{settingText(setting)}</strong>{' '}
            {swap === undefined ? null : (
              <span className={styles.under}>
                {swap.kind === 'trim' ? 'turn' : 'fit'}{' '}
                {windowText(swap.windowStart, swap.latestStart, clock)}
              </span>
            )}
          </>
        );
      },
    },
    {
      head: 'Mixture',
      figures: true,
      cell: (run) =>
        run.state === 'beyond-hours' ? 'no hours' : <Mixture run={run} state={stateOf(run, machine)} />,
    },
    {
      head: 'Lean in',
      figures: true,
      wideOnly: true,
      cell: (run) => (run.state === 'beyond-hours' ? '' : countText(run)),
    },
    { head: 'Ideal', figures: true, wideOnly: true, cell: ({ ideal }) => idealText(ideal) },
    {
      head: 'Power',
      figures: true,
      wideOnly: true,
      cell: ({ relativePower }) => formatPercent(relativePower, 1),
    },
    { head: 'State', wideOnly: true, cell: ({ state }) => STATE[state] },
  ];
}

function stateOf({ leanest, richest }: RunPlan, { limits }: Machine): DriftState {
  if (leanest < -limits.lean) return 'lean';
  return richest > limits.rich ? 'rich' : 'right';
}

function Mixture({ run, state }: { readonly run: RunPlan; readonly state: DriftState }) {
  const least = formatSignedPercent(run.leanest, 1);
  const most = formatSignedPercent(run.richest, 1);
  return (
    <>
      <span className={styles[state]}>{state}</span>{' '}
      <span className={styles.under}>{least === most ? least : `${least} to ${most}`}</span>{' '}
      <span className={classNames(styles.under, styles.narrowOnly)}>{leanText(run)}</span>
    </>
  );
}

const countText = ({ leanCount }: RunPlan): string => `${leanCount.lean} of ${leanCount.of}`;
const leanText = (run: RunPlan): string => `lean in ${countText(run)}`;
