import { classNames } from '@/components/ui/class-names';
import { Section } from '@/components/ui/section';
import { type Column, Table } from '@/components/ui/table';
import type { Plan, RunPlan } from '@/lib/plan/types';
import { formatPercent, formatSignedPercent } from '@/lib/units/format';
import { type Ratio, ratio, type Watt } from '@/lib/units/quantity';
import { fractionCount, shortCount } from '@/lib/words/counts';
import { runTemperatureText } from '@/lib/words/given-air';
import { GRADE_SIDE, GRADE_WORD, RUN_STATE_WORD } from '@/lib/words/grades';
import { idealText } from '@/lib/words/ideal-text';
import { signedHorsepower } from '@/lib/words/power-words';
import { planClock, runName } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';
import { windowText } from '@/lib/words/times';
import type { Voice } from '@/lib/words/voice';
import styles from './tables.module.css';

type RunTableProps = { readonly plan: Plan; readonly voice: Voice };

/** Every run with its jets and how it stands. */
export function RunTable({ plan, voice }: RunTableProps) {
  const fits = new Set(plan.swaps.map(({ beforeRun }) => beforeRun));
  return (
    <Section title="Runs">
      <Table
        caption="Jets for every run. A line above a run: something is fitted before it."
        columns={columnsOf(plan, voice)}
        rows={plan.runs}
        rowKey={({ run }) => String(run)}
        rowClass={({ run, state }) =>
          classNames(fits.has(run) && styles.fits, (state === 'made' || state === 'past') && styles.made)
        }
      />
    </Section>
  );
}

function columnsOf(plan: Plan, { zone, units }: Voice): readonly Column<RunPlan>[] {
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
      cell: (run) => (isKnown(run) ? <Mixture run={run} /> : RUN_STATE_WORD[run.state]),
    },
    {
      head: 'Lean in',
      figures: true,
      wideOnly: true,
      cell: (run) => (isKnown(run) ? countText(run) : ''),
    },
    { head: 'Ideal', figures: true, wideOnly: true, cell: ({ ideal }) => idealText(ideal) },
    {
      head: 'Power',
      figures: true,
      wideOnly: true,
      cell: ({ relativePower }) => <Power {...{ relativePower }} ratedPower={plan.worth.ratedPower} />,
    },
    { head: 'State', wideOnly: true, cell: ({ state }) => RUN_STATE_WORD[state] },
  ];
}

/** False where the numbers of a run say nothing. */
function isKnown({ state }: RunPlan): boolean {
  return state !== 'beyond-hours' && state !== 'out';
}

type PowerProps = { readonly relativePower: Ratio; readonly ratedPower: Watt | null };

/** Against the baseline in its own air, whose power the rated one is taken for. */
function Power({ relativePower, ratedPower }: PowerProps) {
  return (
    <>
      {formatPercent(relativePower, 1)}{' '}
      <span className={styles.under}>{signedHorsepower(ratio(relativePower - 1), ratedPower)}</span>
    </>
  );
}

function Mixture({ run }: { readonly run: RunPlan }) {
  const least = formatSignedPercent(run.leanest, 1);
  const most = formatSignedPercent(run.richest, 1);
  return (
    <>
      <span className={styles[GRADE_SIDE[run.grade]]}>{GRADE_WORD[run.grade]}</span>{' '}
      <span className={styles.under}>{least === most ? least : `${least} to ${most}`}</span>{' '}
      <span className={classNames(styles.under, styles.narrowOnly)}>{leanText(run)}</span>
    </>
  );
}

const countText = ({ leanCount }: RunPlan): string => shortCount(leanCount);
const leanText = ({ leanCount }: RunPlan): string => `lean ${fractionCount(leanCount)}`;
