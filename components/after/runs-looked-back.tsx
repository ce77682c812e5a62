import { Section } from '@/components/ui/section';
import { type Column, Table } from '@/components/ui/table';
import { Way } from '@/components/ui/way';
import type { NightReview, RunReview } from '@/lib/after/review';
import type { AfterVoice } from '@/lib/words/after';
import { runsCaption, runWords } from '@/lib/words/after-rows';
import { GRADE_SIDE } from '@/lib/words/grades';
import { together } from '@/lib/words/together';
import styles from './after.module.css';

type RunsLookedBackProps = { readonly review: NightReview; readonly voice: AfterVoice };

/** Every run: what was planned, what was in, what the air was, how it stood and what the plugs said. */
export function RunsLookedBack({ review, voice }: RunsLookedBackProps) {
  return (
    <Section title="Run by run">
      <Table
        caption={runsCaption(review)}
        columns={columnsOf(voice)}
        rows={review.runs}
        rowKey={({ start, name }) => `${start} ${name}`}
      />
    </Section>
  );
}

function columnsOf(voice: AfterVoice): readonly Column<RunReview>[] {
  return [
    {
      head: 'Run',
      names: true,
      cell: (run) => {
        const { when, air } = runWords(run, voice);
        return (
          <span className={styles.run}>
            {run.name} <span className={styles.under}>{when}</span>{' '}
            <span className={styles.under}>{air}</span>
          </span>
        );
      },
    },
    {
      head: 'In',
      cell: (run) => {
        const { made, planned, plannedFor } = runWords(run, voice);
        return (
          <>
            <strong>{together(made)}</strong> <span className={styles.under}>{together(planned)}</span>{' '}
            {plannedFor === '' ? null : <span className={styles.under}>{plannedFor}</span>}
          </>
        );
      },
    },
    { head: 'Stood', cell: (run) => <StoodCell run={run} voice={voice} /> },
    { head: 'Log', wideOnly: true, cell: (run) => <LogCell run={run} voice={voice} /> },
  ];
}

type CellProps = { readonly run: RunReview; readonly voice: AfterVoice };

function StoodCell({ run, voice }: CellProps) {
  const { stood, drift } = runWords(run, voice);
  // A guess alarms nobody.
  const side =
    run.stood === null || run.made?.told !== true ? undefined : styles[GRADE_SIDE[run.stood.grade]];
  return (
    <>
      <span className={side}>{together(stood)}</span> <span className={styles.under}>{drift}</span>
      <span className={styles.narrowOnly}>
        <LogCell run={run} voice={voice} named />
      </span>
    </>
  );
}

/** `named`: it stands in no column of its own that says so. */
function LogCell({ run, voice, named = false }: CellProps & { readonly named?: boolean }) {
  const { verdict } = runWords(run, voice);
  if (verdict !== null) return named ? `log: ${verdict}` : verdict;
  if (run.made === null) return null;
  return (
    <>
      <span className={styles.paper}>not logged</span>
      <Way href="/log" className={styles.toLog} aria-label={`Log it: ${run.name}`}>
        Log it
      </Way>
    </>
  );
}
