'use client';

import { useCallback, useState } from 'react';
import { airDraft } from '@/components/air/air-draft';
import { AirFields } from '@/components/air/air-fields';
import { EditorForm } from '@/components/draft/editor-form';
import { part, wholeOf } from '@/components/draft/part';
import { type DraftState, useDraft } from '@/components/draft/use-draft';
import { type Save, useForm } from '@/components/draft/use-form';
import { useHours } from '@/components/store/use-clock-zone';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { AirStateJson } from '@/lib/contract/air';
import type { MachineJson } from '@/lib/contract/machine';
import type { NewBaseline } from '@/lib/store/machine-history';
import type { LogRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { numberText } from '@/lib/units/entry-text';
import { loggedRunText } from '@/lib/words/log';
import { jetsText, settingText } from '@/lib/words/settings';
import {
  type AirSource,
  BASELINE_SHAPE,
  baselineLabel,
  type NewBaselineDraft,
  newBaselineDraft,
  readNewBaseline,
} from './baseline-draft';
import { PastAirFields } from './past-air';

const SOURCES: readonly { readonly value: AirSource; readonly label: string }[] = [
  { value: 'log', label: 'A run in the log' },
  { value: 'typed', label: 'Typed weather' },
  { value: 'past', label: 'A place and past hour' },
];

const JUDGED: readonly { readonly value: NewBaselineDraft['judged']; readonly label: string }[] = [
  { value: 'edge', label: 'On the edge of lean' },
  { value: 'right', label: 'Right' },
  { value: 'size-rich', label: 'A size rich' },
];

const JUDGED_HINTS: Readonly<Record<NewBaselineDraft['judged'], string>> = {
  edge: 'Any leaner would have been too lean. The right jets are taken to be richer by the lean limit.',
  right: 'Neither lean nor rich by plugs, temperatures or piston wash.',
  'size-rich': 'Kept one size rich to be safe. The right jets are taken to be a size smaller.',
};

type BaselineFormProps = {
  readonly machineId: string;
  readonly machine: MachineJson;
  readonly log: readonly Stored<LogRecord>[];
  readonly units: UnitChoice;
  readonly today: string;
  readonly onSave: Save<Omit<NewBaseline, 'id'>>;
  readonly onCancel: () => void;
};

/** Jets proven right, and the air they were proven in. */
export function BaselineForm(props: BaselineFormProps) {
  const { machineId, machine, log, units, today, onSave, onCancel } = props;
  const [start] = useState(() => newBaselineDraft(machine, units, today));
  const draft = useDraft({ key: `baseline.${machineId}`, initial: start, shape: BASELINE_SHAPE });
  const read = useCallback((typed: NewBaselineDraft) => readNewBaseline(typed, machine), [machine]);
  const form = useForm({ draft, read, labelOf: baselineLabel, onSave });
  const { value, set } = wholeOf(draft);
  return (
    <EditorForm title="New baseline" form={form} draft={draft} saveLabel="Save baseline" onCancel={onCancel}>
      <Choice
        {...form.field('source')}
        value={value.source}
        options={SOURCES}
        onChange={(source) => set('source', source)}
      />
      <AirSourceFields draft={draft} log={log} />
      <AirFields air={part(draft, 'air')} group="air" form={form} units={value.units} />
      <Columns>
        <TextField
          {...form.field('mains')}
          hint="410, or 410/400/410"
          value={value.mains}
          onChange={(mains) => set('mains', mains)}
        />
        {machine.trim === undefined ? null : (
          <NumberField
            {...form.field('trim')}
            signed
            value={value.trim}
            onChange={(trim) => set('trim', trim)}
          />
        )}
      </Columns>
      <Choice
        {...form.field('judged')}
        hint={JUDGED_HINTS[value.judged]}
        value={value.judged}
        options={JUDGED}
        onChange={(judged) => set('judged', judged)}
      />
      <Columns>
        <TextField
          {...form.field('provenOn')}
          type="date"
          hint="Parts changed up to this day count as proven with it."
          value={value.provenOn}
          onChange={(provenOn) => set('provenOn', provenOn)}
        />
        <TextField
          {...form.field('note')}
          hint="Optional."
          maxLength={500}
          value={value.note}
          onChange={(note) => set('note', note)}
        />
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
