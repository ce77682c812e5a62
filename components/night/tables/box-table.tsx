import { Fragment } from 'react';
import { Section } from '@/components/ui/section';
import { type Column, Table } from '@/components/ui/table';
import { laneOf } from '@/lib/carb/lane';
import type { BoxEntry, Machine } from '@/lib/carb/machine';
import { type JetSpan, jetSpans } from '@/lib/plan/jet-spans';
import type { Plan } from '@/lib/plan/types';
import { type Instant, instant } from '@/lib/time/instant';
import { STATE_WORD } from '@/lib/words/grades';
import { planClock } from '@/lib/words/runs';
import { type Clock, clockText } from '@/lib/words/times';
import type { Voice } from '@/lib/words/voice';
import styles from './tables.module.css';

type BoxTableProps = {
  readonly plan: Plan;
  readonly machine: Machine;
  readonly carburettor: number;
  readonly voice: Voice;
};

/** Every jet owned, and when tonight it would be lean, good or rich if it stayed in. */
export function BoxTable({ plan, machine, carburettor, voice }: BoxTableProps) {
  const through = runsStretch(plan);
  if (through === null) return null;
  const clock = planClock(plan, voice.zone);
  const many = machine.carburettors.length > 1;
  const columns: readonly Column<BoxEntry>[] = [
    { head: 'Jet', names: true, cell: ({ size }) => size },
    { head: 'Owned', figures: true, cell: ({ count }) => count },
    {
      head: 'Through the runs, if it stayed in',
      cell: ({ size }) => {
        const lane = laneOf(machine, size, machine.trim?.baseline ?? null);
        return <Spans spans={jetSpans(lane, { hours: plan.hours, carburettor, ...through })} clock={clock} />;
      },
    },
  ];
  return (
    <Section title="The box tonight">
      <Table
        caption={`At the most likely temperature${many ? `; in carburettor ${carburettor + 1}` : ''}.`}
        columns={columns}
        rows={machine.box}
        rowKey={({ size }) => String(size)}
      />
    </Section>
  );
}

/** From the first run's start to the last run's end, as far as there are hours. */
function runsStretch(plan: Plan): { readonly from: Instant; readonly to: Instant } | null {
  const [first, last] = [plan.hours[0], plan.hours.at(-1)];
  const start = plan.sortedRuns[0]?.start;
  if (first === undefined || last === undefined || start === undefined) return null;
  const from = Math.max(first.at, start);
  const to = Math.min(last.at, Math.max(...plan.sortedRuns.map(({ end }) => end)));
  return from < to ? { from: instant(from), to: instant(to) } : null;
}

function Spans({ spans, clock }: { readonly spans: readonly JetSpan[]; readonly clock: Clock }) {
  const only = spans[0];
  if (spans.length === 1 && only !== undefined)
    return (
      <>
        <span className={styles[only.state]}>{STATE_WORD[only.state]}</span> throughout
      </>
    );
  return spans.map(({ state, from, to }, i) => (
    <Fragment key={from}>
      {i === 0 ? '' : ' '}
      <span className={styles.span}>
        <span className={styles[state]}>{STATE_WORD[state]}</span>{' '}
        {i === spans.length - 1 ? `from ${clockText(from, clock)}` : `to ${clockText(to, clock)},`}
      </span>
    </Fragment>
  ));
}
