'use client';

import { useState } from 'react';
import { useWrite } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Notice } from '@/components/ui/notice';
import { Section } from '@/components/ui/section';
import { type Column, Table } from '@/components/ui/table';
import {
  baselinesOf,
  type DatedBaseline,
  withActiveBaseline,
  withNewBaseline,
  withoutBaseline,
} from '@/lib/store/machine-history';
import { activeBaseline, machineWithBaseline } from '@/lib/store/machine-in-force';
import { newId } from '@/lib/store/new-id';
import type { LogRecord, MachineRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { NO_BREAK_SPACE } from '@/lib/units/format';
import { baselineText, judgedText, provenAirText } from '@/lib/words/baseline';
import { together } from '@/lib/words/together';
import { BaselineForm } from './baseline-form';

export type HistoryProps = {
  readonly stored: Stored<MachineRecord>;
  readonly log: readonly Stored<LogRecord>[];
  readonly units: UnitChoice;
  readonly today: string;
};

/** Stands for the machine's own baseline until it gets an id by being kept beside others. */
const OWN = 'own';

/** All baselines of a machine, which of them is in force, and the way to add one. */
export function BaselineSection({ stored, log, units, today }: HistoryProps) {
  const write = useWrite();
  const [adding, setAdding] = useState(false);
  const record = stored.value;
  const baselines = baselinesOf(record, OWN);
  const inForce = activeBaseline(record)?.id ?? OWN;
  const change = (how: (current: MachineRecord) => MachineRecord, words: string) =>
    write.change({ table: 'machines', id: stored.id }, how, words);
  return (
    <Section title="Baselines" aside={<Button onClick={() => setAdding(true)}>Add a baseline</Button>}>
      <p>Plans count from the baseline in force: jets proven right, and the air they were proven in.</p>
      {record.toBeReproven ? (
        <Notice tone="caution" title="Test the baseline again: a part was changed since.">
          <p>Until then plans widen their doubt by what the parts below may have moved.</p>
        </Notice>
      ) : null}
      <Table
        caption="Every baseline with its air"
        captionHidden
        rows={baselines}
        rowKey={({ id }) => id}
        columns={columns({
          inForce,
          units,
          onUse: (baseline) =>
            change(
              (current) => withActiveBaseline(current, baseline.id),
              `${baselineText(baseline)} is in force.`,
            ),
          onRemove: (baseline) =>
            change(
              (current) => withoutBaseline(current, baseline.id),
              `${baselineText(baseline)} is deleted.`,
            ),
        })}
      />
      <Dialog title="New baseline" open={adding} onClose={() => setAdding(false)}>
        <BaselineForm
          machineId={stored.id}
          machine={machineWithBaseline(record)}
          {...{ log, units, today }}
          onCancel={() => setAdding(false)}
          onSave={async (typed) => {
            const [id, firstId] = [newId(), newId()];
            const refused = await change(
              (current) => withNewBaseline(current, { id, ...typed }, firstId),
              `${baselineText(typed)} is in force.`,
            );
            if (refused === undefined) setAdding(false);
            return refused;
          }}
        />
      </Dialog>
    </Section>
  );
}

type ColumnsGiven = {
  readonly inForce: string;
  readonly units: UnitChoice;
  readonly onUse: (baseline: DatedBaseline) => void;
  readonly onRemove: (baseline: DatedBaseline) => void;
};

function columns({ inForce, units, onUse, onRemove }: ColumnsGiven): readonly Column<DatedBaseline>[] {
  return [
    { head: 'Jets, proven on', names: true, cell: (baseline) => together(baselineText(baseline)) },
    { head: 'Air', cell: ({ baseline }) => provenAirText(baseline.air, units) },
    {
      head: 'Judged',
      cell: ({ baseline }) => (
        <>
          {judgedText(baseline.judged)}
          {baseline.note === undefined ? null : <> · {baseline.note}</>}
        </>
      ),
      wideOnly: true,
    },
    {
      head: 'Use',
      cell: (baseline) =>
        baseline.id === inForce ? (
          <strong>{`In${NO_BREAK_SPACE}force`}</strong>
        ) : (
          <>
            <Button aria-label={`Use ${baselineText(baseline)}`} onClick={() => onUse(baseline)}>
              Use
            </Button>{' '}
            <Button
              kind="quiet"
              aria-label={`Delete ${baselineText(baseline)}`}
              onClick={() => onRemove(baseline)}
            >
              Delete
            </Button>
          </>
        ),
    },
  ];
}
