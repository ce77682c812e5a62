'use client';

import { useCallback } from 'react';
import { AirFields } from '@/components/air/air-fields';
import { EditorForm } from '@/components/draft/editor-form';
import { useFields } from '@/components/draft/use-fields';
import type { Save } from '@/components/draft/use-form';
import { useHours } from '@/components/store/use-clock-zone';
import { Section } from '@/components/ui/section';
import { Columns } from '@/components/ui/stack';
import { blankLogDraft, LOG, LOG_SHAPE, type LogDraft, logDraft } from '@/lib/fields/log/log-rows';
import { readLogEntry } from '@/lib/fields/log/read-log-entry';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import type { LogRecord, MachineRecord, Stored } from '@/lib/store/records';
import { machineNames } from '@/lib/store/roster-names';
import type { UnitChoice } from '@/lib/units/choice';
import { jetsText } from '@/lib/words/settings';
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
  const hours = useHours();
  const read = useCallback(
    (typed: LogDraft) => readLogEntry(typed, { machines, before, zone }),
    [machines, before, zone],
  );
  const fields = useFields<typeof LOG, LogDraft, LogRecord>({
    key: `log.${id}`,
    table: LOG,
    shape: LOG_SHAPE,
    initial: () => {
      if (before !== null) return logDraft(before, units, hours);
      const machineId = machines[0]?.id ?? '';
      return blankLogDraft({ units, machineId, date: today, mains: mainsOf(machines, machineId) });
    },
    read,
    onSave,
  });
  const { draft, form, field } = fields;
  const chosen = machines.find((machine) => machine.id === draft.value.machineId)?.value.machine;
  return (
    <EditorForm title="Run" form={form} draft={draft} saveLabel="Save run" onCancel={onCancel}>
      {field('machineId', {
        options: [...machineNames(machines)].map(([value, label]) => ({ value, label })),
        sets: (machineId) => ({ mains: mainsOf(machines, machineId) }),
      })}
      <Columns>
        {field('run')}
        {field('date')}
        {field('clock')}
      </Columns>
      <Columns>
        {field('mains')}
        {chosen?.trim === undefined ? null : field('trim')}
      </Columns>
      <VerdictFields {...fields} cylinders={chosen?.carburettors.length ?? 1} />
      <Section title="The air it ran in" level={3}>
        <AirFields draft={draft} field={field} />
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
