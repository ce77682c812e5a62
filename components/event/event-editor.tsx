'use client';

import { useState } from 'react';
import { EditorForm } from '@/components/draft/editor-form';
import { wholeOf } from '@/components/draft/part';
import { useDraft } from '@/components/draft/use-draft';
import { type Save, useForm } from '@/components/draft/use-form';
import { NumberField } from '@/components/ui/number-field';
import { Section } from '@/components/ui/section';
import { Columns } from '@/components/ui/stack';
import { Switch } from '@/components/ui/switch';
import type { EventJson } from '@/lib/contract/event';
import type { TypedEvent } from '@/lib/night/record-with-event';
import { instant } from '@/lib/time/instant';
import { localDate } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { blankEventDraft, draftFromEvent } from './draft-from-event';
import { eventLabel } from './event-labels';
import { EVENT_SHAPE } from './event-shape';
import { PlaceFields } from './place-fields';
import { readEvent } from './read-event';
import { RunFields } from './run-fields';
import type { EventSectionProps } from './section-props';
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
  const [start] = useState(() => {
    const timezone = deviceZone();
    const date = localDate(instant(Date.now()), timezone);
    return initial === null
      ? blankEventDraft({ units, timezone, date })
      : draftFromEvent(initial, { units, date });
  });
  const draft = useDraft({ key: `event.${id}`, initial: start, shape: EVENT_SHAPE });
  const form = useForm({ draft, read: readEvent, labelOf: eventLabel, onSave });
  return (
    <EditorForm
      title={initial === null ? 'New event' : `Event ${initial.name}`}
      form={form}
      draft={draft}
      saveLabel="Save event"
      onCancel={onCancel}
    >
      <PlaceFields draft={draft} form={form} />
      <TimeFields draft={draft} form={form} />
      <RunFields draft={draft} form={form} />
      <SwapFields draft={draft} form={form} />
    </EditorForm>
  );
}

function SwapFields({ draft, form }: EventSectionProps) {
  const whole = wholeOf(draft);
  const { ride, swapMinutes, typicalSeconds } = draft.value;
  return (
    <Section title="Between the runs">
      <Switch
        label="A ride: no stop to swap jets"
        hint="One setting is planned for all of it, safe for its coldest hour."
        checked={ride}
        onChange={(on) => whole.set('ride', on)}
      />
      <Columns>
        {ride ? null : (
          <NumberField
            {...form.field('swapMinutes')}
            hint="From engine off to ready."
            unit="min"
            value={swapMinutes}
            onChange={(text) => whole.set('swapMinutes', text)}
          />
        )}
        <NumberField
          {...form.field('typicalSeconds')}
          hint="Optional; prices a swap in seconds."
          unit="s"
          value={typicalSeconds}
          onChange={(text) => whole.set('typicalSeconds', text)}
        />
      </Columns>
    </Section>
  );
}
