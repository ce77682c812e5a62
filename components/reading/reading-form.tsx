'use client';

import { useCallback, useState } from 'react';
import { EditorForm } from '@/components/draft/editor-form';
import { Fold } from '@/components/draft/fold';
import { wholeOf } from '@/components/draft/part';
import { type FormState, type SaveOutcome, useForm } from '@/components/draft/use-form';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Columns, Stack } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { ReadingJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { UnitChoice } from '@/lib/units/choice';
import { PRESSURE_CHOICES, PRESSURE_MEANINGS, PRESSURE_NAMES } from '@/lib/words/pressure-kinds';
import { warningSentence } from '@/lib/words/warnings';
import { type PlannedNight, questionAbout } from '@/lib/words/what-moved';
import { kindMeant } from './kind-meant';
import { Questioned } from './questioned';
import { readReading } from './read-reading';
import { type ReadingDraft, type ReadPressureKind, readingLabel } from './reading-draft';
import { useReadingDraft } from './use-reading-draft';

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
  const { night, voice } = planned;
  const { zone } = night;
  const draft = useReadingDraft({ planned, units, id, initial });
  const { elevation } = night.series;
  const was = initial?.time ?? null;
  const { now } = planned;
  const read = useCallback(
    (typed: ReadingDraft) =>
      readReading(typed, { now, zone, elevation, id, was: was === null ? null : instantFromJson(was) }),
    [now, zone, elevation, id, was],
  );
  const [questioned, setQuestioned] = useState<ReadingDraft | null>(null);
  const form = useForm({
    draft,
    read,
    labelOf: readingLabel,
    onSave: async (reading) => {
      const question = questionAbout(reading, planned);
      if (question === null) return onSave(reading);
      if (question.code !== 'reading-outside-hours') setQuestioned(draft.value);
      return warningSentence(question, planned.plan, voice);
    },
  });
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
      <ReadingFields draft={draft} form={form} />
    </EditorForm>
  );
}

const KINDS: readonly { readonly value: ReadPressureKind; readonly label: string }[] = [
  { value: 'none', label: 'Not read' },
  ...PRESSURE_CHOICES,
];

type ReadingFieldsProps = {
  readonly draft: Parameters<typeof wholeOf<ReadingDraft>>[0];
  readonly form: FormState;
};

function ReadingFields({ draft, form }: ReadingFieldsProps) {
  const { value, set } = wholeOf(draft);
  const { units, pressureKind } = value;
  const more = [pressureKind === 'none' ? '' : 'pressure', value.humidity === '' ? '' : 'humidity'];
  return (
    <Stack>
      <Columns>
        <NumberField
          {...form.field('temperature')}
          hint="In the shade, away from engines and the tow vehicle."
          signed
          unit={`°${units.temperature}`}
          value={value.temperature}
          onChange={(text) => set('temperature', text)}
        />
        <TextField
          {...form.field('clock')}
          hint="When it was read, by the clock at the track."
          autoComplete="off"
          value={value.clock}
          onChange={(text) => set('clock', text)}
        />
      </Columns>
      <Fold
        title="Pressure and humidity"
        now={more.filter((part) => part !== '').join(' and ') || 'not read'}
        open={form.hasErrors('pressure') || form.hasErrors('humidity')}
      >
        <Stack>
          <Choice
            {...form.field('pressureKind')}
            hint={
              pressureKind === 'none' ? 'The pressure of the hours stays.' : PRESSURE_MEANINGS[pressureKind]
            }
            value={pressureKind}
            options={KINDS}
            onChange={(kind) => set('pressureKind', kind)}
          />
          {pressureKind === 'none' ? null : (
            <NumberField
              {...form.field('pressure')}
              label={PRESSURE_NAMES[pressureKind]}
              unit={units.pressure}
              value={value.pressure}
              onChange={(text) => set('pressure', text)}
            />
          )}
          <NumberField
            {...form.field('humidity')}
            hint="Relative humidity; it hardly counts."
            unit="%"
            value={value.humidity}
            onChange={(text) => set('humidity', text)}
          />
        </Stack>
      </Fold>
    </Stack>
  );
}
