import type { EventJson } from '@/lib/contract/event';
import { readCoordinatePair } from '@/lib/fields/coordinate';
import { type DraftOf, type FieldTable, groupOf, type ValuesOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import { LATITUDE, LONGITUDE } from '@/lib/fields/place/coordinates';
import { blankOf, fieldLabel } from '@/lib/fields/table-values';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import { numberText } from '@/lib/units/entry-text';

const f = fieldRowsFor<EventJson>();

/** A map gives both coordinates at once. */
const both = (text: string) => readCoordinatePair(text) ?? {};

/** An event, in the order of its form. */
export const EVENT = {
  top: groupOf(
    {
      name: f.text({
        label: 'Name of the event',
        at: 'name',
        needed: 'Give the event a name, such as “Friday night drags”.',
        maxLength: 80,
        autoComplete: 'off',
      }),
      placeName: f.raw({
        label: 'Place',
        at: 'place.name',
        hint: 'Optional; gives dusk and forecasts.',
        maxLength: 120,
        autoComplete: 'off',
      }),
      latitude: f.raw(LATITUDE),
      longitude: f.raw(LONGITUDE),
      elevation: f.elevation({ label: 'Elevation', at: 'elevationM', example: '402', hint: 'Of the track.' }),
      timezone: f.raw({ label: 'Time zone of the track', at: 'timezone' }),
      date: f.text({ label: 'Date of the first run', type: 'date' }),
      how: f.choice({
        label: 'How to enter the runs',
        blank: 'series',
        options: [
          { value: 'series', label: 'First, every, how many' },
          { value: 'list', label: 'One by one' },
        ],
      }),
      swapMinutes: f.number({
        label: 'A jet swap takes',
        at: 'swapMinutes',
        blank: numberText(DEFAULT_OPTIONS.swapMinutes),
        unit: 'min',
        example: String(DEFAULT_OPTIONS.swapMinutes),
        hint: 'From engine off to ready.',
      }),
      typicalSeconds: f.number({
        label: 'Typical time over the distance',
        optional: true,
        unit: 's',
        example: '6.4',
        hint: 'Optional; prices a swap in seconds.',
      }),
      ride: f.flag({
        label: 'A ride: no stop to swap jets',
        at: 'ride',
        hint: 'One setting is planned for all of it, safe for its coldest hour.',
      }),
    },
    { asked: { swapMinutes: ({ ride }) => !ride }, sets: { latitude: both, longitude: both } },
  ),
  series: groupOf({
    first: f.text({ label: 'First at', clock: '19:00', inputMode: 'numeric', autoComplete: 'off' }),
    every: f.number({ label: 'Every', unit: 'min', example: '25' }),
    count: f.number({ label: 'How many', example: '8' }),
    lasting: f.number({ label: 'Each lasting', unit: 'min', example: '6' }),
    /** "Round" gives Round 1, Round 2 ... */
    called: f.text({ label: 'Called', blank: 'Round', maxLength: 60 }),
  }),
} satisfies FieldTable;

/** One run of a list. */
export const RUN = groupOf({
  name: f.text({ label: 'Name', autoComplete: 'off' }),
  start: f.text({ label: 'Start', clock: '19:00', autoComplete: 'off' }),
  /** A clock time, or minutes. */
  end: f.text({ label: 'End or minutes', placeholder: '6 min', autoComplete: 'off' }),
  /** Days after the event's date, '' where the order of the clock times says it. */
  day: f.choice<string>({ label: 'Day', blank: '', control: 'select', options: [] }),
  /** Which moment is meant where the clock shows the start twice that night; '' where the order says it. */
  which: f.choice({
    label: 'Which of the two',
    blank: '',
    control: 'select',
    options: [
      { value: '', label: 'By the order of the runs' },
      { value: 'first', label: 'Before the clocks go back' },
      { value: 'second', label: 'After the clocks go back' },
    ],
  }),
});

export type RunDraft = ValuesOf<typeof RUN.rows> & {
  /** `run-2` was the third run of the event that was opened, `new-…` was not there. */
  readonly key: string;
  /** What the form does not show, kept as it was. */
  readonly weight: number;
  readonly typicalSeconds: string;
};

export type EventDraft = DraftOf<typeof EVENT> & { readonly runs: readonly RunDraft[] };

export function emptyRun(key: string, name: string): RunDraft {
  return { ...blankOf(RUN), key, name, weight: 1, typicalSeconds: '' };
}

/** What the field of this name is called in the list of complaints. */
export function eventLabel(name: string): string {
  const [list, index, key = ''] = name.split('.');
  if (list !== 'runs') return fieldLabel(EVENT, name);
  return index === undefined
    ? 'Runs'
    : `Run ${Number(index) + 1}, ${fieldLabel({ top: RUN }, key).toLowerCase()}`;
}
