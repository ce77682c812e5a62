'use client';

import { useCallback, useState } from 'react';
import { show } from '@/components/club/show';
import type { RosterActs } from '@/components/club/use-roster-acts';
import { EditorForm } from '@/components/draft/editor-form';
import type { FormReading } from '@/components/draft/field-reader';
import { wholeOf } from '@/components/draft/part';
import { useDraft } from '@/components/draft/use-draft';
import { useForm } from '@/components/draft/use-form';
import { draftFromEvent } from '@/components/event/draft-from-event';
import type { EventDraft } from '@/components/event/event-draft';
import { eventLabel } from '@/components/event/event-labels';
import { EVENT_SHAPE } from '@/components/event/event-shape';
import { readEvent } from '@/components/event/read-event';
import { RunFields } from '@/components/event/run-fields';
import { Dialog } from '@/components/ui/dialog';
import { Columns } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { ClubRecords } from '@/lib/night/club';
import type { TypedEvent } from '@/lib/night/record-with-event';
import { newId } from '@/lib/store/new-id';
import type { ClubClass } from '@/lib/store/records';
import { instant } from '@/lib/time/instant';
import { localDate } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';

type ClassDialogProps = {
  /** `new` for one that is not there yet. */
  readonly classId: string;
  readonly records: ClubRecords;
  readonly units: UnitChoice;
  readonly acts: RosterActs | null;
};

const close = () => show('');

/** A class and its runs: an event in small, at the place and with the weather of the whole one. */
export function ClassDialog({ classId, records, units, acts }: ClassDialogProps) {
  const { event, club } = records.event.value;
  const known = club?.classes.find(({ id }) => id === classId) ?? null;
  if (known === null && classId !== 'new') return null;
  return (
    <Dialog title={known === null ? 'New class' : `Class ${known.name}`} open onClose={close}>
      <ClassForm
        kept={`class.${records.event.id}.${classId}`}
        known={known}
        event={event}
        units={units}
        onSave={async ({ event: { name, runs }, from }) => {
          const refused = await acts?.putClass({ id: known?.id ?? newId(), name, runs }, from);
          if (refused === undefined) close();
          return refused;
        }}
      />
    </Dialog>
  );
}

type ClassFormProps = {
  /** Key of the unsaved typing. */
  readonly kept: string;
  readonly known: ClubClass | null;
  readonly event: ClubRecords['event']['value']['event'];
  readonly units: UnitChoice;
  readonly onSave: (typed: TypedEvent) => Promise<string | undefined>;
};

function ClassForm({ kept, known, event, units, onSave }: ClassFormProps) {
  const [start] = useState(() => {
    const first = event.runs[0];
    const at = first === undefined ? instant(Date.now()) : instantFromJson(first.start);
    const date = localDate(at, event.timezone);
    return draftFromEvent({ ...event, name: known?.name ?? '', runs: known?.runs ?? [] }, { units, date });
  });
  const draft = useDraft({ key: kept, initial: start, shape: EVENT_SHAPE });
  const read = useCallback((typed: EventDraft) => inClassWords(readEvent(typed)), []);
  const form = useForm({ draft, read, labelOf: classLabel, onSave });
  const whole = wholeOf(draft);
  return (
    <EditorForm title="Class" form={form} draft={draft} saveLabel="Save class" onCancel={close}>
      <Columns>
        <TextField
          {...form.field('name')}
          value={draft.value.name}
          maxLength={80}
          onChange={(text) => whole.set('name', text)}
        />
        <TextField
          {...form.field('date')}
          type="date"
          value={draft.value.date}
          onChange={(text) => whole.set('date', text)}
        />
      </Columns>
      <RunFields draft={draft} form={form} />
    </EditorForm>
  );
}

const classLabel = (name: string): string => (name === 'name' ? 'Name of the class' : eventLabel(name));

function inClassWords(reading: FormReading<TypedEvent>): FormReading<TypedEvent> {
  if (reading.errors.name === undefined) return reading;
  return { ...reading, errors: { ...reading.errors, name: 'Give the class a name, such as “Open”.' } };
}
