'use client';

import { useCallback } from 'react';
import { AirFields } from '@/components/air/air-fields';
import { EditorForm } from '@/components/draft/editor-form';
import type { DraftState } from '@/components/draft/use-draft';
import { useFields } from '@/components/draft/use-fields';
import type { Save } from '@/components/draft/use-form';
import { useHours } from '@/components/store/use-clock-zone';
import { Section } from '@/components/ui/section';
import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import type { PullRecord } from '@/lib/compare/compare';
import {
  blankPullDraft,
  type Measure,
  PULL,
  type PullDraft,
  pullFromLog,
  readPulls,
} from '@/lib/fields/compare/pull-rows';
import type { Side } from '@/lib/power/pull';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import type { LogRecord, MachineRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { loggedRunText, speedUnit } from '@/lib/words/log';
import { jetsText, settingText } from '@/lib/words/settings';

type PullFormProps = {
  readonly comparisonId: string;
  readonly machine: MachineRecord;
  readonly measure: Measure;
  readonly log: readonly Stored<LogRecord>[];
  readonly units: UnitChoice;
  readonly side: Side;
  readonly onSave: Save<readonly Omit<PullRecord, 'id'>[]>;
  readonly onCancel: () => void;
};

/** Runs or pulls of one side: what was measured, on which jets, in which air. */
export function PullForm(props: PullFormProps) {
  const { comparisonId, machine, measure, log, units, side, onSave, onCancel } = props;
  const read = useCallback((typed: PullDraft) => readPulls(typed, { machine, measure }), [machine, measure]);
  const { draft, form, field } = useFields({
    key: `pull.${comparisonId}`,
    table: PULL,
    initial: () => {
      const mains = machineWithBaseline(machine).carburettors.map(({ main }) => main);
      return blankPullDraft(units, side, jetsText(mains));
    },
    read,
    onSave,
  });
  const unit = { power: 'hp', time: 's', speed: speedUnit(draft.value.units) }[measure];
  return (
    <EditorForm title="Runs" form={form} draft={draft} saveLabel="Save runs" onCancel={onCancel}>
      {field('side')}
      <TakenFromLog draft={draft} log={log} measure={measure} />
      {field('measures', { unit })}
      <Columns>
        {field('mains')}
        {machine.machine.trim === undefined ? null : field('trim')}
        {field('note')}
      </Columns>
      <Section title="The air outside" level={3}>
        <AirFields draft={draft} field={field} />
      </Section>
    </EditorForm>
  );
}

type TakenFromLogProps = Pick<PullFormProps, 'log' | 'measure'> & { readonly draft: DraftState<PullDraft> };

/** Fills jets, air and a time from a run of the log. */
function TakenFromLog({ draft, log, measure }: TakenFromLogProps) {
  const hours = useHours();
  if (log.length === 0) return null;
  return (
    <Select
      label="Take over a run of the log"
      value=""
      options={[
        { value: '', label: 'Choose a run' },
        ...log.map(({ id, value: run }) => ({
          value: id,
          label: `${loggedRunText(run, hours)}: ${settingText(run.setting)}`,
        })),
      ]}
      onChange={(id) => {
        const run = log.find((entry) => entry.id === id)?.value;
        if (run !== undefined) draft.change(null, (before) => pullFromLog(before, run, measure));
      }}
    />
  );
}
