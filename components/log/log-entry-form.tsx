'use client';

import { useCallback, useState } from 'react';
import { AirFields } from '@/components/air/air-fields';
import { EditorForm } from '@/components/draft/editor-form';
import { part, wholeOf } from '@/components/draft/part';
import { useDraft } from '@/components/draft/use-draft';
import { type FormState, type Save, useForm } from '@/components/draft/use-form';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Section } from '@/components/ui/section';
import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { JudgedBy, Verdict } from '@/lib/carb/observation';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import type { LogRecord, MachineRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { judgedByText, speedUnit } from '@/lib/words/log';
import { jetsText } from '@/lib/words/settings';
import { blankLogDraft, LOG_SHAPE, type LogDraft, logDraft } from './log-draft';
import { logLabel, readLogEntry } from './read-log-entry';

const VERDICTS: readonly { readonly value: Verdict | 'none'; readonly label: string }[] = [
  { value: 'lean', label: 'Lean' },
  { value: 'right', label: 'Right' },
  { value: 'rich', label: 'Rich' },
  { value: 'none', label: 'Not judged' },
];

const JUDGES: readonly JudgedBy[] = [
  'plugs',
  'exhaust-temperature',
  'wideband',
  'piston-wash',
  'clock',
  'feel',
];

type LogEntryFormProps = {
  /** Under what unsaved typing is kept: the entry's id, or `new`. */
  readonly id: string;
  readonly before: LogRecord | null;
  readonly machines: readonly Stored<MachineRecord>[];
  readonly units: UnitChoice;
  readonly today: string;
  readonly zone: string;
  readonly onSave: Save<LogRecord>;
  readonly onCancel: () => void;
};

/** One run of the log, in full. */
export function LogEntryForm(props: LogEntryFormProps) {
  const { id, before, machines, units, today, zone, onSave, onCancel } = props;
  const [start] = useState(() => {
    if (before !== null) return logDraft(before, units);
    const machineId = machines[0]?.id ?? '';
    return blankLogDraft({ units, machineId, date: today, mains: mainsOf(machines, machineId) });
  });
  const draft = useDraft({ key: `log.${id}`, initial: start, shape: LOG_SHAPE });
  const read = useCallback(
    (typed: LogDraft) => readLogEntry(typed, { machines, before, zone }),
    [machines, before, zone],
  );
  const form = useForm({ draft, read, labelOf: logLabel, onSave });
  return (
    <EditorForm title="Run" form={form} draft={draft} saveLabel="Save run" onCancel={onCancel}>
      <RunFields draft={wholeOf(draft)} form={form} machines={machines} />
      <VerdictFields draft={wholeOf(draft)} form={form} />
      <Section title="The air it ran in" level={3}>
        <AirFields air={part(draft, 'air')} group="air" form={form} units={draft.value.units} />
      </Section>
    </EditorForm>
  );
}

/** The jets of a machine's baseline, as text. */
function mainsOf(machines: readonly Stored<MachineRecord>[], machineId: string): string {
  const record = machines.find(({ id }) => id === machineId)?.value;
  return record === undefined
    ? ''
    : jetsText(machineWithBaseline(record).carburettors.map(({ main }) => main));
}

type FieldsProps = { readonly draft: ReturnType<typeof wholeOf<LogDraft>>; readonly form: FormState };

function RunFields({
  draft,
  form,
  machines,
}: FieldsProps & { readonly machines: readonly Stored<MachineRecord>[] }) {
  const { value, set, setAll } = draft;
  const chosen = machines.find(({ id }) => id === value.machineId);
  return (
    <>
      <Select
        {...form.field('machineId')}
        value={value.machineId}
        options={machines.map((machine) => ({ value: machine.id, label: machine.value.machine.name }))}
        onChange={(machineId) => setAll({ machineId, mains: mainsOf(machines, machineId) })}
      />
      <Columns>
        <TextField
          {...form.field('run')}
          value={value.run}
          maxLength={80}
          onChange={(run) => set('run', run)}
        />
        <TextField
          {...form.field('date')}
          type="date"
          value={value.date}
          onChange={(date) => set('date', date)}
        />
        <TextField
          {...form.field('clock')}
          type="time"
          value={value.clock}
          onChange={(clock) => set('clock', clock)}
        />
      </Columns>
      <Columns>
        <TextField
          {...form.field('mains')}
          hint="410, or 410/400/410"
          inputMode="text"
          value={value.mains}
          onChange={(mains) => set('mains', mains)}
        />
        {chosen?.value.machine.trim === undefined ? null : (
          <NumberField
            {...form.field('trim')}
            signed
            value={value.trim}
            onChange={(trim) => set('trim', trim)}
          />
        )}
      </Columns>
    </>
  );
}

function VerdictFields({ draft, form }: FieldsProps) {
  const { value, set } = draft;
  const offSide = value.verdict === 'lean' || value.verdict === 'rich';
  return (
    <>
      <Choice
        {...form.field('verdict')}
        value={value.verdict}
        options={VERDICTS}
        onChange={(verdict) => set('verdict', verdict)}
      />
      <Columns>
        {offSide ? (
          <NumberField
            {...form.field('sizes')}
            hint="Halves count. Empty: about one."
            value={value.sizes}
            onChange={(sizes) => set('sizes', sizes)}
          />
        ) : null}
        <Select
          {...form.field('judgedBy')}
          value={value.judgedBy}
          options={[
            { value: 'none', label: 'Not said' },
            ...JUDGES.map((judge) => ({ value: judge, label: judgedByText(judge) })),
          ]}
          onChange={(judge) => set('judgedBy', judge)}
        />
        <NumberField
          {...form.field('seconds')}
          unit="s"
          value={value.seconds}
          onChange={(seconds) => set('seconds', seconds)}
        />
        <NumberField
          {...form.field('speed')}
          unit={speedUnit(value.units)}
          value={value.speed}
          onChange={(speed) => set('speed', speed)}
        />
      </Columns>
      <TextField
        {...form.field('note')}
        maxLength={1000}
        value={value.note}
        onChange={(note) => set('note', note)}
      />
    </>
  );
}
