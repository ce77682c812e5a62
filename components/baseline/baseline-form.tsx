'use client';

import { useCallback } from 'react';
import { AirFields } from '@/components/air/air-fields';
import { EditorForm } from '@/components/draft/editor-form';
import type { DraftState } from '@/components/draft/use-draft';
import { useFields } from '@/components/draft/use-fields';
import type { Save } from '@/components/draft/use-form';
import { useHours } from '@/components/store/use-clock-zone';
import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import type { AirStateJson } from '@/lib/contract/air';
import type { MachineJson } from '@/lib/contract/machine';
import { airDraft } from '@/lib/fields/air/air-rows';
import {
  NEW_BASELINE,
  type NewBaselineDraft,
  newBaselineDraft,
  type ToldBaseline,
} from '@/lib/fields/baseline/baseline-rows';
import { readNewBaseline } from '@/lib/fields/baseline/read-new-baseline';
import type { LogRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { numberText } from '@/lib/units/entry-text';
import { loggedRunText } from '@/lib/words/log';
import { jetsText, settingText } from '@/lib/words/settings';
import { PastAirFields } from './past-air';

type BaselineFormProps = {
  readonly machineId: string;
  readonly machine: MachineJson;
  readonly log: readonly Stored<LogRecord>[];
  readonly units: UnitChoice;
  readonly today: string;
  readonly onSave: Save<ToldBaseline>;
  readonly onCancel: () => void;
};

/** Jets proven right, and the air they were proven in. */
export function BaselineForm(props: BaselineFormProps) {
  const { machineId, machine, log, units, today, onSave, onCancel } = props;
  const read = useCallback((typed: NewBaselineDraft) => readNewBaseline(typed, machine), [machine]);
  const { draft, form, field } = useFields({
    key: `baseline.${machineId}`,
    table: NEW_BASELINE,
    initial: () => newBaselineDraft(machine, units, today),
    read,
    onSave,
  });
  return (
    <EditorForm title="New baseline" form={form} draft={draft} saveLabel="Save baseline" onCancel={onCancel}>
      {field('source')}
      <AirSourceFields draft={draft} log={log} />
      <AirFields draft={draft} field={field} />
      <Columns>
        {field('mains')}
        {machine.trim === undefined ? null : field('trim')}
      </Columns>
      {field('judged')}
      <Columns>
        {field('provenOn')}
        {field('note')}
      </Columns>
    </EditorForm>
  );
}

type SourceProps = {
  readonly draft: DraftState<NewBaselineDraft>;
  readonly log: readonly Stored<LogRecord>[];
};

/** Fills the fields below from where the air is known; they can be changed after. */
function AirSourceFields({ draft, log }: SourceProps) {
  const hours = useHours();
  const { source } = draft.value;
  const fill = (air: AirStateJson, more: Partial<NewBaselineDraft>) =>
    draft.change(null, (before) => ({ ...before, ...more, air: airDraft(air, before.units) }));
  if (source === 'past') return <PastAirFields onFound={({ air, date }) => fill(air, { provenOn: date })} />;
  if (source === 'typed') return null;
  const newest = [...log].sort((a, b) => Date.parse(b.value.at) - Date.parse(a.value.at));
  if (newest.length === 0) return <p>There is no run of this machine in the log yet.</p>;
  return (
    <Select
      label="Run"
      hint="Its air, jets and date are taken over below."
      value=""
      options={[
        { value: '', label: 'Choose a run' },
        ...newest.map(({ id, value }) => ({
          value: id,
          label: `${loggedRunText(value, hours)}: ${settingText(value.setting)}`,
        })),
      ]}
      onChange={(id) => {
        const run = newest.find((entry) => entry.id === id)?.value;
        if (run === undefined) return;
        const { mains, trim } = run.setting;
        fill(run.air, {
          mains: jetsText(mains),
          provenOn: run.at.slice(0, 10),
          ...(trim === null ? {} : { trim: numberText(trim) }),
        });
      }}
    />
  );
}
