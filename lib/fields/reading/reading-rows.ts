import type { ReadingJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { type DraftOf, type FieldTable, groupOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import { blankDraft, draftFrom } from '@/lib/fields/table-values';
import type { Instant } from '@/lib/time/instant';
import { type ClockZone, localClock } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { PRESSURE_CHOICES, PRESSURE_MEANINGS, PRESSURE_NAMES } from '@/lib/words/pressure-kinds';

const f = fieldRowsFor<ReadingJson>();

const pressure = f.pressure({
  label: 'Pressure',
  at: 'pressureHpa',
  example: (units) => (units.pressure === 'inHg' ? '28.60' : '968'),
});

/** What was read at the track. */
export const READING = {
  top: groupOf(
    {
      temperature: f.temperature({
        label: 'Temperature',
        at: 'temperatureC',
        example: (units) => (units.temperature === 'F' ? '14' : '-10'),
        hint: 'In the shade, away from engines and the tow vehicle.',
      }),
      clock: f.raw({
        label: 'Time',
        at: 'time',
        hint: 'When it was read, by the clock at the track.',
        autoComplete: 'off',
      }),
      pressureKind: f.choice({
        label: 'Pressure read',
        blank: 'none',
        options: [{ value: 'none', label: 'Not read' }, ...PRESSURE_CHOICES],
        hint: { ...PRESSURE_MEANINGS, none: 'The pressure of the hours stays.' },
      }),
      pressure,
      humidity: f.percent({
        label: 'Humidity',
        at: 'relativeHumidity',
        optional: true,
        example: '80',
        digits: 1,
        hint: 'Relative humidity; it hardly counts.',
      }),
    },
    {
      as: {
        pressure: ({ pressureKind: kind }) =>
          kind === 'none' ? null : { ...pressure, label: PRESSURE_NAMES[kind] },
      },
    },
  ),
} satisfies FieldTable;

export type ReadingDraft = DraftOf<typeof READING>;

type Start = { readonly units: UnitChoice; readonly zone: ClockZone; readonly now: Instant };

/** The draft that reads back as a reading that was kept; a new one is taken now until the person says otherwise. */
export function readingDraft(reading: ReadingJson | null, { units, zone, now }: Start): ReadingDraft {
  if (reading === null) return { ...blankDraft(READING, units), clock: localClock(now, zone) };
  return {
    ...draftFrom(READING, reading, units),
    clock: localClock(instantFromJson(reading.time), zone),
    pressureKind: reading.pressureHpa === undefined ? 'none' : 'station',
  };
}
