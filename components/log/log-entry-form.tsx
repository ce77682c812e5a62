'use client';

import { useCallback, useState } from 'react';
import { AirFields } from '@/components/air/air-fields';
import { EditorForm } from '@/components/draft/editor-form';
import { part, wholeOf } from '@/components/draft/part';
import { useDraft } from '@/components/draft/use-draft';
import { type FormState, type Save, useForm } from '@/components/draft/use-form';
import { NumberField } from '@/components/ui/number-field';
import { Section } from '@/components/ui/section';
import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import type { LogRecord, MachineRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { jetsText } from '@/lib/words/settings';
import { blankLogDraft, LOG_SHAPE, type LogDraft, logDraft } from './log-draft';
import { logLabel, readLogEntry } from './read-log-entry';
import { VerdictFields } from './verdict-fields';

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
      <VerdictFields
        draft={wholeOf(draft)}
        form={form}
        cylinders={cylindersIn(machines, draft.value.machineId)}
      />
      <Section title="The air it ran in" level={3}>
        <AirFields air={part(draft, 'air')} group="air" form={form} units={draft.value.units} />
      </Section>
    </EditorForm>
  );
}

function cylindersIn(machines: readonly Stored<MachineRecord>[], machineId: string): number {
  return machines.find(({ id }) => id === machineId)?.value.machine.carburettors.length ?? 1;
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
