'use client';

import { useMemo, useState } from 'react';
import { EditorForm } from '@/components/draft/editor-form';
import { useDraft } from '@/components/draft/use-draft';
import { type Save, useForm } from '@/components/draft/use-form';
import { useClockZone } from '@/components/store/use-clock-zone';
import { Section } from '@/components/ui/section';
import { blankHoursDraft, draftFromHours, type HoursEvent } from '@/lib/fields/hours/draft-from-hours';
import { HOURS_SHAPE, type HoursDraft } from '@/lib/fields/hours/hours-draft';
import { hoursLabel } from '@/lib/fields/hours/hours-labels';
import { type HoursReading, readHours } from '@/lib/fields/hours/read-hours';
import { hasPressure, takePasted } from '@/lib/fields/hours/take-pasted';
import { readPastedHours } from '@/lib/hours/paste';
import type { TypedHours } from '@/lib/store/records';
import { type Instant, instant } from '@/lib/time/instant';
import type { UnitChoice } from '@/lib/units/choice';
import { HourAirFields } from './air-fields';
import { HourGrid } from './hour-grid';
import { PastePanel } from './paste-panel';
import { untakenHours } from './untaken-hours';
import { optionsAt, usePaste } from './use-paste';

type HoursEditorProps = {
  /** Tells the kept typing of one event from that of another: the event record's id. */
  readonly id: string;
  /** null where no hours were typed yet. */
  readonly initial: TypedHours | null;
  /** Where and when the runs are. */
  readonly event: HoursEvent;
  readonly units: UnitChoice;
  /** Gets the typed hours and the elevation they were typed with; the elevation belongs to the event. */
  readonly onSave: Save<HoursReading>;
  readonly onCancel: () => void;
};

/**
 * The form of a night's hours. Mount it in a client component, keyed by the event's record:
 *
 *     <HoursEditor key={id} id={id} initial={record.typed} event={record.event} units={preferences}
 *       onSave={({ typed, elevationM }) => save(typed, elevationM)} onCancel={close} />
 *
 * What `onSave` answers, if anything, says why the hours were not kept and leaves the form as it is. Unsaved typing
 * is kept in the browser under `id`.
 */
export function HoursEditor({ id, initial, event, units, onSave, onCancel }: HoursEditorProps) {
  const zone = event.timezone;
  const clock = useClockZone(zone);
  const [start] = useState(() => {
    const place = { event, units, now: instant(Date.now()) };
    return initial === null ? blankHoursDraft(place) : draftFromHours(initial, place);
  });
  const draft = useDraft<HoursDraft>({ key: `hours.${id}`, initial: start, shape: HOURS_SHAPE });
  const found = useMemo(() => readHours(draft.value, { zone }), [draft.value, zone]);
  /** A draft that is about to be saved may be another than the one in the form. */
  const read = (typed: HoursDraft) => (typed === draft.value ? found : readHours(typed, { zone }));
  const labelOf = (name: string): string => hoursLabel(name, draft.value.rows, clock);
  const paste = usePaste(draft.value, zone);
  const untaken = untakenHours(draft.value, { reading: paste.reading, zone });
  const form = useForm({ draft, read, labelOf, onSave, untaken });
  const [said, setSaid] = useState('');
  /** Clean lines go straight into the hours; anything doubtful goes to the panel to be looked at. */
  function pasteLines(text: string, at: Instant) {
    const reading = readPastedHours(text, optionsAt(draft.value, at, zone));
    if (
      reading.ok &&
      reading.value.skipped.length + reading.value.dropped.length === 0 &&
      !hasPressure(reading.value)
    ) {
      draft.change(null, (before) => takePasted(before, reading.value, null));
      setSaid(`${reading.value.rows.length} hours pasted. Undo brings back what stood before.`);
      return;
    }
    paste.startAt(at);
    draft.change(null, (before) => ({ ...before, pasted: text }));
  }
  const parts = { draft, form, event, reading: found.value };
  return (
    <EditorForm
      title="Hours of the night"
      form={form}
      draft={draft}
      saveLabel="Save hours"
      onCancel={onCancel}
    >
      <Section title="Temperatures" aside="Type what you know; the hours between are filled in.">
        <output>{said}</output>
        <HourGrid {...parts} onPasteLines={pasteLines} />
      </Section>
      <PastePanel {...parts} paste={paste} onTaken={setSaid} />
      <HourAirFields {...parts} />
    </EditorForm>
  );
}
