'use client';

import { useCallback, useState } from 'react';
import { AirFields } from '@/components/air/air-fields';
import { EditorForm } from '@/components/draft/editor-form';
import { part, wholeOf } from '@/components/draft/part';
import { type DraftState, useDraft } from '@/components/draft/use-draft';
import { type Save, useForm } from '@/components/draft/use-form';
import { useHours } from '@/components/store/use-clock-zone';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Section } from '@/components/ui/section';
import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { PullRecord } from '@/lib/compare/compare';
import type { Side } from '@/lib/power/pull';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import type { LogRecord, MachineRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { loggedRunText, speedUnit } from '@/lib/words/log';
import { jetsText, settingText } from '@/lib/words/settings';
import {
  blankPullDraft,
  type Measure,
  PULL_SHAPE,
  type PullDraft,
  pullFromLog,
  pullLabel,
  readPulls,
} from './pull-draft';

const SIDES: readonly { readonly value: Side; readonly label: string }[] = [
  { value: 'before', label: 'Before' },
  { value: 'after', label: 'After' },
];

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
  const [start] = useState(() => {
    const mains = machineWithBaseline(machine).carburettors.map(({ main }) => main);
    return blankPullDraft(units, side, jetsText(mains));
  });
  const draft = useDraft({ key: `pull.${comparisonId}`, initial: start, shape: PULL_SHAPE });
  const read = useCallback((typed: PullDraft) => readPulls(typed, { machine, measure }), [machine, measure]);
  const form = useForm({ draft, read, labelOf: pullLabel, onSave });
  const { value, set } = wholeOf(draft);
  const unit = { power: 'hp', time: 's', speed: speedUnit(value.units) }[measure];
  return (
    <EditorForm title="Runs" form={form} draft={draft} saveLabel="Save runs" onCancel={onCancel}>
      <Choice
        {...form.field('side')}
        value={value.side}
        options={SIDES}
        onChange={(next) => set('side', next)}
      />
      <TakenFromLog draft={draft} log={log} measure={measure} />
      <NumberField
        {...form.field('measures')}
        hint="Several runs in the same air on the same jets: one after the other, a space between. Three show the scatter."
        unit={unit}
        inputMode="text"
        value={value.measures}
        onChange={(measures) => set('measures', measures)}
      />
      <Columns>
        <TextField
          {...form.field('mains')}
          hint="410, or 410/400/410"
          value={value.mains}
          onChange={(mains) => set('mains', mains)}
        />
        {machine.machine.trim === undefined ? null : (
          <NumberField
            {...form.field('trim')}
            signed
            value={value.trim}
            onChange={(trim) => set('trim', trim)}
          />
        )}
        <TextField
          {...form.field('note')}
          maxLength={500}
          value={value.note}
          onChange={(note) => set('note', note)}
        />
      </Columns>
      <Section title="The air outside" level={3}>
        <AirFields air={part(draft, 'air')} group="air" form={form} units={value.units} />
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
