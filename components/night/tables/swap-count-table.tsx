import { SWAP_WORTH } from '@/components/machine/swap-worth-hash';
import { classNames } from '@/components/ui/class-names';
import { Section } from '@/components/ui/section';
import { type Column, Table } from '@/components/ui/table';
import { Way } from '@/components/ui/way';
import { sameSetting } from '@/lib/carb/same-setting';
import type { BySwapCount, Plan } from '@/lib/plan/types';
import { formatNumber, formatPercent } from '@/lib/units/format';
import { counted } from '@/lib/words/listing';
import { withHorsepower } from '@/lib/words/power-words';
import { chosenCount, oneSwapLess, runnerUpSentence } from '@/lib/words/price';
import { runName } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';
import { together } from '@/lib/words/together';
import { worthSentences } from '@/lib/words/worth';
import styles from './tables.module.css';

type SwapCountTableProps = { readonly plan: Plan; readonly machineId: string };

/** The best plan for every number of swaps: what one less costs. */
export function SwapCountTable({ plan, machineId }: SwapCountTableProps) {
  if (plan.bySwapCount.length < 2) return null;
  const chosen = chosenCount(plan);
  const timed = plan.bySwapCount.some(({ secondsLost }) => secondsLost !== null);
  return (
    <Section title="What a swap is worth">
      <p>
        {together(
          [...worthSentences(plan), oneSwapLess(plan), runnerUpSentence(plan)].filter(Boolean).join(' '),
        )}
      </p>
      <Way href={`/machines?edit=${encodeURIComponent(machineId)}#${SWAP_WORTH}`}>
        Change what a swap is worth
      </Way>
      <Table
        caption="The best plan with each number of swaps; power and seconds are lost against the ideal mixture."
        columns={columnsOf(plan, timed)}
        rows={plan.bySwapCount}
        rowKey={({ swaps }) => String(swaps)}
        rowClass={(row) => (row === chosen ? styles.chosen : undefined)}
      />
    </Section>
  );
}

function columnsOf(plan: Plan, timed: boolean): readonly Column<BySwapCount>[] {
  const chosen = chosenCount(plan);
  return [
    {
      head: 'Swaps',
      names: true,
      cell: (row) => (
        <>
          {row.swaps} {row === chosen ? <span className={styles.under}>the call</span> : null}
        </>
      ),
    },
    {
      head: 'Jets',
      cell: (row) => (
        <div className={styles.jets}>
          {together(stintsText(plan, row.settings))}{' '}
          {/* On a narrow screen in place of the columns that have no room. */}
          <span className={classNames(styles.under, styles.narrowOnly)}>
            {counted(row.richRuns, 'run')} too rich
          </span>{' '}
          <span className={classNames(styles.under, styles.narrowOnly)}>
            {lossText(plan, row)} power{timed ? `, ${secondsText(row)}` : ''} lost
          </span>
        </div>
      ),
    },
    { head: 'Runs over lean risk', figures: true, cell: ({ leanRunsOverRisk }) => leanRunsOverRisk },
    { head: 'Runs too rich', figures: true, wideOnly: true, cell: ({ richRuns }) => richRuns },
    { head: 'Power lost', figures: true, wideOnly: true, cell: (row) => lossText(plan, row) },
    ...(timed ? [secondsColumn] : []),
  ];
}

const secondsColumn: Column<BySwapCount> = {
  head: 'Time lost',
  figures: true,
  wideOnly: true,
  cell: secondsText,
};

/** "0.65 % (1.3 hp)". */
function lossText({ worth }: Plan, { loss }: BySwapCount): string {
  return withHorsepower(formatPercent(loss, 2), loss, worth.ratedPower);
}

function secondsText({ secondsLost }: BySwapCount): string {
  return secondsLost === null ? '' : `${formatNumber(secondsLost, 2)} s`;
}

/** "410, then 430 from Round 4". */
function stintsText(plan: Plan, settings: BySwapCount['settings']): string {
  return settings
    .flatMap((setting, run) => {
      const before = settings[run - 1];
      if (before === undefined) return [settingText(setting)];
      if (sameSetting(before, setting)) return [];
      return [`${settingText(setting)} from ${runName(plan, run)}`];
    })
    .join(', then ');
}
