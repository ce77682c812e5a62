'use client';

import { useCallback, useState } from 'react';
import { EditorForm } from '@/components/draft/editor-form';
import { Fold } from '@/components/draft/fold';
import { type FieldsForm, useFields } from '@/components/draft/use-fields';
import type { SaveOutcome } from '@/components/draft/use-form';
import { Columns, Stack } from '@/components/ui/stack';
import type { ReadingJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { readReading } from '@/lib/fields/reading/read-reading';
import { READING, type ReadingDraft, readingDraft } from '@/lib/fields/reading/reading-rows';
import type { UnitChoice } from '@/lib/units/choice';
import { warningSentence } from '@/lib/words/warnings';
import { type PlannedNight, questionAbout } from '@/lib/words/what-moved';
import { kindMeant } from './kind-meant';
import { Questioned } from './questioned';

type ReadingFormProps = {
  readonly planned: PlannedNight;
  readonly units: UnitChoice;
  /** The reading's name, new or known. */
  readonly id: string;
  /** null for a new one. */
  readonly initial: ReadingJson | null;
  readonly onSave: (reading: ReadingJson) => Promise<SaveOutcome>;
  readonly onCancel: () => void;
};

/** Two numbers and a time. What stands far from the hours is asked about before it is used. */
export function ReadingForm({ planned, units, id, initial, onSave, onCancel }: ReadingFormProps) {
  const { night, now, voice } = planned;
  const { zone } = night;
  const { elevation } = night.series;
  const was = initial?.time ?? null;
  const read = useCallback(
    (typed: ReadingDraft) =>
      readReading(typed, { now, zone, elevation, id, was: was === null ? null : instantFromJson(was) }),
    [now, zone, elevation, id, was],
  );
  const [questioned, setQuestioned] = useState<ReadingDraft | null>(null);
  const fields = useFields({
    key: `reading.${night.records.event.id}.${initial === null ? 'new' : id}`,
    table: READING,
    initial: () => readingDraft(initial, { units, zone: voice.zone, now }),
    read,
    onSave: async (reading) => {
      const question = questionAbout(reading, planned);
      if (question === null) return onSave(reading);
      if (question.code !== 'reading-outside-hours') setQuestioned(draft.value);
      return warningSentence(question, planned.plan, voice);
    },
  });
  const { draft, form } = fields;
  const keep = async (reading: ReadingJson) => {
    if ((await onSave(reading)) === undefined) draft.forget();
  };
  const asked = questioned === draft.value ? read(draft.value).value : null;
  return (
    <EditorForm
      title="Reading at the track"
      form={form}
      draft={draft}
      saveLabel="Use this reading"
      onCancel={onCancel}
    >
      {asked === null ? null : (
        <Questioned
          meant={kindMeant(draft.value, questionAbout(asked, planned))}
          onMeant={(pressureKind) => {
            draft.change(null, (before) => ({ ...before, pressureKind }));
            const meant = read({ ...draft.value, pressureKind }).value;
            if (meant !== null && questionAbout(meant, planned) === null) void keep(meant);
          }}
          onKeep={() => void keep({ ...asked, confirmed: true })}
        />
      )}
      <ReadingFields {...fields} />
    </EditorForm>
  );
}

function ReadingFields({ draft, form, field }: FieldsForm<typeof READING>) {
  const { pressureKind, humidity } = draft.value;
  const more = [pressureKind === 'none' ? '' : 'pressure', humidity === '' ? '' : 'humidity'];
  return (
    <Stack>
      <Columns>
        {field('temperature')}
        {field('clock')}
      </Columns>
      <Fold
        title="Pressure and humidity"
        now={more.filter((part) => part !== '').join(' and ') || 'not read'}
        open={form.hasErrors('pressure') || form.hasErrors('humidity')}
      >
        <Stack>
          {field('pressureKind')}
          {field('pressure')}
          {field('humidity')}
        </Stack>
      </Fold>
    </Stack>
  );
}
