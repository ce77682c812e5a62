import { Section } from '@/components/ui/section';
import { type Column, Table } from '@/components/ui/table';
import { isShown } from '@/lib/night/figure';
import type { Plan, RunPlan } from '@/lib/plan/types';
import { formatPercent, formatSignedNumber, NO_BREAK_SPACE } from '@/lib/units/format';
import { type Ratio, ratio, type Watt } from '@/lib/units/quantity';
import { idealText } from '@/lib/words/given-air';
import { GRADE_SIDE, GRADE_WORD, RUN_STATE_WORD } from '@/lib/words/grades';
import { signedHorsepower } from '@/lib/words/power-words';
import { runName } from '@/lib/words/runs';
import { together } from '@/lib/words/together';
import styles from './tables.module.css';

type RunNumbersProps = { readonly plan: Plan };

/** What the figure draws of every run, in numbers. */
export function RunNumbers({ plan }: RunNumbersProps) {
  return (
    <Section title="Runs">
      <Table
        caption="Every run in numbers: how its jets stand, the ideal main, and its power."
        columns={columnsOf(plan)}
        rows={plan.runs}
        rowKey={({ run }) => String(run)}
      />
    </Section>
  );
}

function columnsOf(plan: Plan): readonly Column<RunPlan>[] {
  return [
    { head: 'Run', names: true, cell: ({ run }) => together(runName(plan, run)) },
    {
      head: 'Mixture',
      figures: true,
      cell: (run) => (isShown(run) ? <Mixture run={run} /> : RUN_STATE_WORD[run.state]),
    },
    { head: 'Ideal', figures: true, cell: (run) => (isShown(run) ? idealText(run.ideal) : '') },
    {
      head: 'Power',
      figures: true,
      cell: (run) =>
        isShown(run) ? <Power relativePower={run.relativePower} ratedPower={plan.worth.ratedPower} /> : '',
    },
  ];
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
  const [least, most] = [run.leanest, run.richest].map((drift) => formatSignedNumber(drift * 100, 1));
  const range = least === most ? most : `${least} to ${most}`;
  return (
    <>
      <span className={styles[GRADE_SIDE[run.grade]]}>{GRADE_WORD[run.grade]}</span>{' '}
      <span className={styles.under}>{`${range}${NO_BREAK_SPACE}%`}</span>
    </>
  );
}
