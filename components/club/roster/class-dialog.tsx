'use client';

import { useState } from 'react';
import type { RosterActs } from '@/components/club/use-roster-acts';
import { EditorForm } from '@/components/draft/editor-form';
import { useFields } from '@/components/draft/use-fields';
import { RunFields } from '@/components/event/run-fields';
import { useHours } from '@/components/store/use-clock-zone';
import { Dialog } from '@/components/ui/dialog';
import { Notice } from '@/components/ui/notice';
import { Columns } from '@/components/ui/stack';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { draftFromEvent, EVENT_SHAPE } from '@/lib/fields/event/draft-from-event';
import { EVENT, type EventDraft, eventLabel } from '@/lib/fields/event/event-rows';
import { readEvent } from '@/lib/fields/event/read-event';
import type { FormReading } from '@/lib/fields/field-reader';
import type { ClubRecords } from '@/lib/night/club';
import type { TypedEvent } from '@/lib/night/record-with-event';
import { newId } from '@/lib/store/new-id';
import type { ClubClass } from '@/lib/store/records';
import { instant } from '@/lib/time/instant';
import { localDate } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { ELSEWHERE } from '@/lib/words/elsewhere';

type ClassDialogProps = {
  /** `new` for one that is not there yet. */
  readonly classId: string;
  readonly records: ClubRecords;
  readonly units: UnitChoice;
  readonly acts: RosterActs;
  readonly onClose: () => void;
};

/** A class and its runs: an event in small, at the place and with the weather of the whole one. */
export function ClassDialog({ classId, records, units, acts, onClose }: ClassDialogProps) {
  const { event, club } = records.event.value;
  const there = club?.classes.find(({ id }) => id === classId) ?? null;
  const [known] = useState(there);
  if (known === null && classId !== 'new') return null;
  return (
    <Dialog title={known === null ? 'New class' : `Class ${known.name}`} open onClose={onClose}>
      {known !== null && there === null ? <Notice tone="caution" title={ELSEWHERE.formGone} /> : null}
      <ClassForm
        kept={`class.${records.event.id}.${classId}`}
        known={known}
        event={event}
        units={units}
        onSave={async ({ event: { name, runs }, from }) => {
          const refused = await acts.putClass({ id: known?.id ?? newId(), name, runs }, from);
          if (refused === undefined) onClose();
          return refused;
        }}
        onCancel={onClose}
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
  readonly onCancel: () => void;
};

function ClassForm({ kept, known, event, units, onSave, onCancel }: ClassFormProps) {
  const hours = useHours();
  const fields = useFields<typeof EVENT, EventDraft, TypedEvent>({
    key: kept,
    table: EVENT,
    shape: EVENT_SHAPE,
    initial: () => {
      const first = event.runs[0];
      const at = first === undefined ? instant(Date.now()) : instantFromJson(first.start);
      const date = localDate(at, event.timezone);
      return draftFromEvent(
        { ...event, name: known?.name ?? '', runs: known?.runs ?? [] },
        { units, date, hours },
      );
    },
    read: readClass,
    labelOf: classLabel,
    onSave,
  });
  const { draft, form, field } = fields;
  return (
    <EditorForm title="Class" form={form} draft={draft} saveLabel="Save class" onCancel={onCancel}>
      <Columns>
        {field('name', { label: classLabel('name') })}
        {field('date')}
      </Columns>
      <RunFields {...fields} />
    </EditorForm>
  );
}

const classLabel = (name: string): string => (name === 'name' ? 'Name of the class' : eventLabel(name));

function readClass(typed: EventDraft): FormReading<TypedEvent> {
  const reading = readEvent(typed);
  if (reading.errors.name === undefined) return reading;
  return { ...reading, errors: { ...reading.errors, name: 'Give the class a name, such as “Open”.' } };
}
