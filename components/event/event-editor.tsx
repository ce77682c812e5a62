'use client';

import { EditorForm } from '@/components/draft/editor-form';
import { useFields } from '@/components/draft/use-fields';
import type { Save } from '@/components/draft/use-form';
import { useHours } from '@/components/store/use-clock-zone';
import { Section } from '@/components/ui/section';
import { Columns } from '@/components/ui/stack';
import type { EventJson } from '@/lib/contract/event';
import { blankEventDraft, draftFromEvent, EVENT_SHAPE } from '@/lib/fields/event/draft-from-event';
import { EVENT, type EventDraft, eventLabel } from '@/lib/fields/event/event-rows';
import { readEvent } from '@/lib/fields/event/read-event';
import type { TypedEvent } from '@/lib/night/record-with-event';
import { instant } from '@/lib/time/instant';
import { localDate } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { PlaceFields } from './place-fields';
import { RunFields } from './run-fields';
import { TimeFields } from './time-fields';
import { deviceZone } from './zones';

type EventEditorProps = {
  /** Tells the kept typing of one event from that of another: the record's id, or `new`. */
  readonly id: string;
  /** null for a new event. */
  readonly initial: EventJson | null;
  readonly units: UnitChoice;
  readonly onSave: Save<TypedEvent>;
  readonly onCancel: () => void;
};

/**
 * The form of one event. Mount it in a client component, keyed by the record:
 *
 *     <EventEditor key={id} id={id} initial={event} units={preferences} onSave={save} onCancel={close} />
 *
 * `onSave` gets the event its schema has accepted, its runs in order of time, and `from`: which run of `initial` each
 * one was. `recordWithEvent` puts both into a stored record, with what was made and accepted moved along. What
 * `onSave` answers, if anything, says why it was not kept. Unsaved typing is kept in the browser under `id`.
 */
export function EventEditor({ id, initial, units, onSave, onCancel }: EventEditorProps) {
  const hours = useHours();
  const fields = useFields<typeof EVENT, EventDraft, TypedEvent>({
    key: `event.${id}`,
    table: EVENT,
    shape: EVENT_SHAPE,
    initial: () => {
      const timezone = deviceZone();
      const date = localDate(instant(Date.now()), timezone);
      return initial === null
        ? blankEventDraft({ units, timezone, date })
        : draftFromEvent(initial, { units, date, hours });
    },
    read: readEvent,
    labelOf: eventLabel,
    onSave,
  });
  const { draft, form, field } = fields;
  return (
    <EditorForm
      title={initial === null ? 'New event' : `Event ${initial.name}`}
      form={form}
      draft={draft}
      saveLabel="Save event"
      onCancel={onCancel}
    >
      <PlaceFields field={field} />
      <TimeFields {...fields} />
      <RunFields {...fields} />
      <Section title="Between the runs">
        {field('ride')}
        <Columns>
          {field('swapMinutes')}
          {field('typicalSeconds')}
        </Columns>
      </Section>
    </EditorForm>
  );
}
